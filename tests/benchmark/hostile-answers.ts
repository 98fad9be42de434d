import type { Figure } from './figure.ts';
import { percentile } from './running-service.ts';
import type { RunningService, Sent } from './running-service.ts';

interface Answered {
  readonly what: string;
  readonly note: string;
  readonly sent: readonly Sent[];
  readonly service: RunningService;
}

/**
 * What is promised: a picture is stopped after 90 seconds; ten more are for sending it and for starting a process
 * anew. A number of its own, so that more patience of the service does not move the bar. In milliseconds.
 */
const LIMIT = 100_000;
/** Whoever waits longer thinks that it hangs (a usual limit of attention: Miller 1968, from memory). */
const LONG = 10_000;

/** Whether each was looked at and answered by a reading or in words, in time, and the service lives. */
export async function answersInWords({ what, note, sent, service }: Answered): Promise<Figure[]> {
  const times = sent.map(({ milliseconds }) => milliseconds);
  const count = (is: (one: Sent) => boolean): number => sent.filter(is).length;
  const healthy = await fetch(`${service.address}/api/health`).then(
    ({ ok }) => ok,
    () => false,
  );
  const none = { at: 'most', value: 0 } as const;
  const figure = (name: string, value: number, more?: string): Figure => ({
    name: `${what}: ${name}`,
    value,
    unit: '',
    bar: none,
    ...(more === undefined ? {} : { note: more }),
  });
  const kinds = [...new Set(sent.map(({ kind }) => kind))].sort();
  const told = kinds.map((kind) => `${count((one) => one.kind === kind)} ${kind}`);
  return [
    figure(
      'no clear answer',
      count(({ status, isProblem }) => status !== 201 && !isProblem),
      `${note}; ${told.join(', ')}`,
    ),
    // Such an answer tells nothing of how the picture would have been taken.
    figure(
      'sent back without a look',
      count(({ status }) => status === 429 || status === 503),
    ),
    figure(
      'faults of the service (500) and broken connections',
      count(({ status }) => status === 0 || status === 500),
    ),
    figure(
      `answered later than ${LIMIT / 1000} s`,
      count(({ milliseconds }) => milliseconds > LIMIT),
      `99th percentile ${Math.round(percentile(times, 0.99))} ms, longest ${Math.round(Math.max(...times))} ms`,
    ),
    {
      name: `${what}: answered later than ${LONG / 1000} s`,
      value: count(({ milliseconds }) => milliseconds > LONG),
      unit: '',
      bar: null,
      note: `of ${sent.length}`,
    },
    figure('service down afterwards', service.alive() && healthy ? 0 : 1),
  ];
}
