/** Where an S3-compatible store keeps the files: `s3://bucket/prefix?endpoint=https://...&region=...`. */
export interface Bucket {
  readonly bucket: string;
  readonly prefix: string;
  readonly endpoint: string | null;
  readonly region: string;
}

/** Reads the address of a bucket; null when it is none. */
export function bucketOf(address: string): Bucket | null {
  if (!URL.canParse(address)) return null;
  const { protocol, hostname, pathname, searchParams } = new URL(address);
  if (protocol !== 's3:' || hostname === '') return null;
  const endpoint = searchParams.get('endpoint');
  if (endpoint !== null && !URL.canParse(endpoint)) return null;
  return {
    bucket: hostname,
    prefix: pathname.replace(/^\/+|\/+$/g, ''),
    endpoint,
    region: searchParams.get('region') ?? 'us-east-1',
  };
}
