/** Every kind of problem that an answer may state: the last part of its `type`, which never changes. */
export const KINDS = {
  'not-understood': { status: 400, title: 'Not understood' },
  'not-found': { status: 404, title: 'Not found' },
  'no-such-way': { status: 405, title: 'Not done that way' },
  'wrong-kind-of-body': { status: 415, title: 'Not the kind of body that is taken here' },
  'no-key': { status: 401, title: 'No key' },
  'beyond-key': { status: 403, title: 'Beyond this key' },
  'foreign-host': { status: 403, title: 'Asked by another name' },
  'foreign-page': { status: 403, title: 'Asked by another page' },
  'does-not-fit': { status: 422, title: 'Does not fit' },
  'not-a-photo': { status: 422, title: 'Not a photo' },
  'nothing-found': { status: 422, title: 'Nothing found in the photo' },
  clash: { status: 409, title: 'Wishes clash' },
  'used-key': { status: 422, title: 'Key already used for something else' },
  stale: { status: 412, title: 'Changed in the meantime' },
  'too-large': { status: 413, title: 'Too large' },
  'too-many': { status: 429, title: 'Too many questions' },
  busy: { status: 503, title: 'Busy' },
  'disk-full': { status: 507, title: 'The disk is full' },
  'cannot-write': { status: 503, title: 'The data folder cannot be written' },
  damaged: { status: 500, title: 'The data folder is damaged' },
  broken: { status: 500, title: 'Something went wrong' },
} as const;

export type ProblemKind = keyof typeof KINDS;
