/**
 * A process that calls the functions of one module as it is asked to: `node serve-module.js MODULE`.
 * The service starts it (processes.ts) and may kill it at any moment.
 */
import type { Served } from './processes.ts';

type Work = (task: unknown) => unknown;

const [address] = process.argv.slice(2);
const work = import(address!) as Promise<Readonly<Record<string, Work>>>;

process.on('message', (message) => {
  const { name, task } = message as { name: string; task: unknown };
  void served(name, task).then((answer) => process.send!(answer));
});
// It ends with the service, not before it: a signal to the whole group still lets the work be finished.
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => undefined);
process.on('disconnect', () => process.exit(0));

async function served(name: string, task: unknown): Promise<Served> {
  try {
    return { value: await (await work)[name]!(task) };
  } catch (fault) {
    return { fault };
  }
}
