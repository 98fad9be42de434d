/** A part of a form: words, or a file with its name. */
export type Part =
  readonly [name: string, words: string] | readonly [name: string, file: Buffer, fileName: string];

const BOUNDARY = 'plyhue-boundary-7d1f';

/** A multipart form (RFC 7578), its parts in this order. */
export function form(parts: readonly Part[]): { body: Buffer; headers: Record<string, string> } {
  const pieces = parts.flatMap(([name, value, fileName]) => {
    const named = fileName === undefined ? '' : `; filename="${fileName}"`;
    const type = fileName === undefined ? '' : 'Content-Type: application/octet-stream\r\n';
    const head = `--${BOUNDARY}\r\nContent-Disposition: form-data; name="${name}"${named}\r\n${type}\r\n`;
    return [Buffer.from(head), Buffer.from(value as string), Buffer.from('\r\n')];
  });
  return {
    body: Buffer.concat([...pieces, Buffer.from(`--${BOUNDARY}--\r\n`)]),
    headers: { 'content-type': `multipart/form-data; boundary=${BOUNDARY}` },
  };
}
