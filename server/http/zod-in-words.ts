/** What a schema refused, as a sentence with the path of the field and the value that came. */
export interface IssueInWords {
  readonly detail: string;
  readonly field: string;
  readonly received: unknown;
}

/** The parts of a zod issue that are told. */
export interface Issue {
  readonly code?: string | undefined;
  readonly message: string;
  readonly path: readonly PropertyKey[];
  readonly expected?: unknown;
  readonly values?: unknown;
  readonly minimum?: unknown;
  readonly maximum?: unknown;
  readonly origin?: unknown;
  /** The fields that came and that nothing knows. */
  readonly keys?: unknown;
  /** Of a value that may have several forms, the faults that each of them finds. */
  readonly errors?: unknown;
}

export function issueInWords(found: Issue, asked: unknown): IssueInWords {
  const issue = nearestForm(found);
  if (Array.isArray(issue.keys)) return unknownField(issue.path, issue.keys as string[], asked);
  const field = pathOf(issue.path);
  const received = valueAt(asked, issue.path);
  return {
    detail: `Expected ${expectation(issue)} for ${field} but received ${show(received)}.`,
    field,
    received,
  };
}

/** A field that nothing knows is refused: it may be one that is known, written in another way, and would be lost. */
function unknownField(
  path: readonly PropertyKey[],
  [first]: readonly string[],
  asked: unknown,
): IssueInWords {
  const whole = [...path, first!];
  const field = pathOf(whole);
  const received = valueAt(asked, whole);
  return {
    detail: `Expected only fields that are known here but received ${field} with ${show(received)}.`,
    field,
    received,
  };
}

/** fastify-type-provider-zod tells the path as `/cards/0/count` and the rest under `params`. */
export function firstIssue(
  validation: readonly {
    readonly keyword: string;
    readonly instancePath: string;
    readonly message?: string | undefined;
    readonly params: Readonly<Record<string, unknown>>;
  }[],
): Issue {
  return asIssue(validation[0]!);
}

/**
 * A value that may have several forms is refused by each of them: the first fault of the form that it misses by the
 * fewest, or deepest within, is told at its whole path (a form tells its faults from where it stands).
 */
function nearestForm(issue: Issue): Issue {
  const { errors } = issue;
  if (issue.code !== 'invalid_union' || !Array.isArray(errors)) return issue;
  const missed = (errors as readonly (readonly Issue[])[]).filter(({ length }) => length > 0);
  const values = missed.map(([first, ...more]) => (more.length === 0 ? valueOf(first!) : null));
  if (values.length > 0 && values.every((each) => each !== null))
    return { ...issue, code: 'invalid_value', values: values.flat() };
  const depth = ([first]: readonly Issue[]): number => first!.path.length;
  const nearest = [...missed].sort((a, b) => a.length - b.length || depth(b) - depth(a))[0]?.[0];
  if (nearest === undefined) return issue;
  return nearestForm({ ...nearest, path: [...issue.path, ...nearest.path] });
}

/** The values that a form asks for as they are, where it asks for nothing else. */
function valueOf({ code, path, values, expected }: Issue): readonly unknown[] | null {
  if (path.length > 0) return null;
  if (code === 'invalid_type' && expected === 'null') return [null];
  return code === 'invalid_value' && Array.isArray(values) ? values : null;
}

function asIssue(first: Parameters<typeof firstIssue>[0][number]): Issue {
  const path = first.instancePath
    .split('/')
    .filter((step) => step !== '')
    .map((step) => (/^\d+$/.test(step) ? Number(step) : step));
  return { ...first.params, code: first.keyword, message: first.message ?? '', path };
}

function pathOf(path: readonly PropertyKey[]): string {
  const text = path
    .map((step) => (typeof step === 'number' ? `[${step}]` : `.${String(step)}`))
    .join('')
    .replace(/^\./, '');
  return text === '' ? 'the body' : text;
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  let at = value;
  for (const step of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, step)) return undefined;
    at = (at as Record<PropertyKey, unknown>)[step];
  }
  return at;
}

const THINGS: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'an object',
  array: 'a list',
  tuple: 'a list',
  null: 'nothing (null)',
};

function expectation(issue: Issue): string {
  const { code } = issue;
  if (code === 'invalid_type') {
    const expected = String(issue.expected);
    return THINGS[expected] ?? expected;
  }
  if (code === 'invalid_value' && Array.isArray(issue.values))
    return issue.values.map((value) => JSON.stringify(value)).join(' or ');
  if (code === 'too_small') return amount(issue, String(issue.minimum), 'at least');
  if (code === 'too_big') return amount(issue, String(issue.maximum), 'at most');
  if (code === 'invalid_format') return `a value that fits (${issue.message})`;
  return `something else (${issue.message})`;
}

function amount(issue: Issue, limit: string, bound: string): string {
  if (issue.origin === 'string')
    return `text of ${bound} ${limit} character${limit === '1' ? '' : 's'}`;
  if (issue.origin === 'array') return `a list of ${bound} ${limit}`;
  return `a number of ${bound} ${limit}`;
}

function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = (JSON.stringify(value) as string | undefined) ?? typeof value;
  return text.length > 80 ? `${text.slice(0, 77)}...` : text;
}
