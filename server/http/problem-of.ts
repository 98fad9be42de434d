import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { ZodError } from 'zod';
import type { Problem } from '../contract/values.ts';
import { Refusal } from '../refusals/refusal.ts';
import type { RefusalKind } from '../refusals/refusal.ts';
import type { ProblemKind } from './problem-kinds.ts';
import { Spoken, problem } from './problem.ts';
import { problemOfStorage } from './problem-of-storage.ts';
import { firstIssue, issueInWords } from './zod-in-words.ts';
import type { IssueInWords } from './zod-in-words.ts';

const OF_REFUSAL: Readonly<Record<RefusalKind, ProblemKind>> = {
  'not-understood': 'not-understood',
  'not-found': 'not-found',
  'does-not-fit': 'does-not-fit',
  clash: 'clash',
  'not-a-photo': 'not-a-photo',
  'nothing-found': 'nothing-found',
  'too-large': 'too-large',
  busy: 'busy',
};

/** Any fault as problem details (RFC 9457). A fault of our own says nothing of how the service is made. */
export function problemOf(fault: unknown, asked: unknown): Problem {
  if (fault instanceof Refusal) return problemOfRefusal(fault);
  if (fault instanceof Spoken) return fault.problem;
  if (fault instanceof ZodError) {
    const issue = fault.issues[0];
    if (issue !== undefined) return notUnderstood(issueInWords(issue, asked));
  }
  if (hasZodFastifySchemaValidationErrors(fault))
    return notUnderstood(issueInWords(firstIssue(fault.validation), asked));
  return problemOfFramework(fault) ?? problemOfStorage(fault) ?? problem('broken', BROKEN);
}

const BROKEN = {
  detail: 'Something went wrong in Plyhue itself; nothing that was saved is lost.',
  mend: 'Try once more. If it happens again, the window in which Plyhue runs says more.',
};

function problemOfRefusal({ kind, message, field, received, mend }: Refusal): Problem {
  return problem(OF_REFUSAL[kind], {
    detail: sentence(message),
    field,
    mend,
    // Wishes that clash are named whole: the page offers to take them back.
    ...(received === undefined
      ? {}
      : { received: kind === 'clash' ? received : shortened(received) }),
  });
}

/** A value that a schema refused. */
export function notUnderstood(says: IssueInWords): Problem {
  const { detail, field, received } = says;
  return problem('not-understood', {
    detail,
    field,
    mend: `Correct ${field} and send it again.`,
    ...(received === undefined ? {} : { received: shortened(received) }),
  });
}

/** What the web framework itself refuses, by its published codes: kind, detail, mend and field. */
const OF_FRAMEWORK: readonly (readonly [RegExp, ProblemKind, string, string, string])[] = [
  [
    /^FST_(ERR_CTP_BODY_TOO_LARGE|REQ_FILE_TOO_LARGE)$/,
    'too-large',
    'Expected less than came: a photo may have up to 40 MB, other questions up to 1 MB.',
    'Send a smaller picture, or fewer things at once.',
    'the body',
  ],
  [
    /^FST_(PARTS_LIMIT|FILES_LIMIT|FIELDS_LIMIT)$/,
    'too-large',
    'Expected one photo with a few words, but more parts came.',
    'Send one photo at a time.',
    'the body',
  ],
  [
    /^FST_(ERR_CTP_INVALID_MEDIA_TYPE|INVALID_MULTIPART_CONTENT_TYPE)$/,
    'wrong-kind-of-body',
    'Expected JSON (application/json), or a form with a file (multipart/form-data) where one is taken.',
    'Set the content-type to what the address takes; /api/openapi.json lists it.',
    'content-type',
  ],
  [
    /^FST_ERR_(BAD_URL|PARAM_URL|ASYNC_CONSTRAINT)/,
    'not-understood',
    'Expected a well-formed address but could not read the one that came.',
    'Write what is not plain in it as UTF-8, byte by byte, like %C3%A9 for é.',
    'address',
  ],
  [
    /^FST_(ERR_CTP_|PROTO_VIOLATION|PREMATURE_CLOSE|INVALID_JSON_FIELD_ERROR)/,
    'not-understood',
    'Expected a whole, well-formed body but could not read the one that came.',
    'Check that it came whole and is what its content-type says, and send it again.',
    'the body',
  ],
];

function problemOfFramework(fault: unknown): Problem | null {
  if (!(fault instanceof Error)) return null;
  const code = 'code' in fault ? String(fault.code) : '';
  const known = OF_FRAMEWORK.find(([pattern]) => pattern.test(code));
  if (known !== undefined) {
    const [, kind, detail, mend, field] = known;
    return problem(kind, { detail, mend, field });
  }
  const status = 'statusCode' in fault ? Number(fault.statusCode) : 500;
  if (status === 429)
    return problem('too-many', {
      detail: 'More questions came in a minute than one device may ask.',
      mend: 'Wait a moment and try again.',
    });
  if (status >= 400 && status < 500)
    return problem('not-understood', {
      detail: 'Expected a whole, well-formed question but could not read the one that came.',
      mend: 'Check the address and the body, and send it again.',
      // A body that is no JSON, or names a field __proto__.
      ...(fault instanceof SyntaxError ? { field: 'the body' } : {}),
    });
  return null;
}

function sentence(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** A value that came, short enough to be shown back. */
export function shortened(value: unknown): unknown {
  if (value === null || typeof value === 'boolean') return value;
  if (typeof value === 'number') return Number.isFinite(value) ? value : String(value);
  const text =
    typeof value === 'string' ? value : ((JSON.stringify(value) as string | undefined) ?? '');
  if (text.length <= 120) return typeof value === 'string' ? text : value;
  return `${text.slice(0, 117)}...`;
}
