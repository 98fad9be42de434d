/** Work in processes of their own, which can be stopped at any moment and take nothing down with them. */
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { existsSync } from 'node:fs';
import { setPriority } from 'node:os';
import { fileURLToPath } from 'node:url';

export interface ProcessSettings {
  /** The address of `serve-module` as it runs here, and of the module whose functions it serves. */
  readonly server: URL;
  readonly module: URL;
  readonly execArgv: readonly string[];
  /** Memory that one process may hold, in MB: its heap, and on Linux all of its data. */
  readonly megabytes: number;
  /** A process with nothing to do ends after this, in milliseconds. */
  readonly idle: number;
}

export interface Processes {
  /**
   * Lets a process call one of the module's functions; a process is started when none is free.
   *
   * Throws      what the function threw; `Stopped` when the process did not answer in time, or ended.
   */
  run(name: string, task: unknown, milliseconds: number): Promise<unknown>;
  /** Waits for what is under way, then ends all. */
  close(): Promise<void>;
}

/** A process that was killed because it took too long, or that broke (mostly for want of memory). */
export class Stopped extends Error {
  readonly why: 'time' | 'broke';

  constructor(why: Stopped['why']) {
    super(why === 'time' ? 'stopped, because it took too long' : 'the process broke');
    this.why = why;
  }
}

/** What `serve-module` sends back. */
export type Served = { readonly value: unknown } | { readonly fault: unknown };

/**
 * A photo that a stranger sends may spin in a decoder or swell to gigabytes. A thread cannot be stopped
 * while it is inside a native decoder, and its limits do not count pixels; a process can be killed.
 */
export function openProcesses(settings: ProcessSettings): Processes {
  const free: Child[] = [];
  const atWork = new Set<Promise<unknown>>();

  function leave(child: Child): void {
    const at = free.indexOf(child);
    if (at >= 0) free.splice(at, 1);
    child.end();
  }

  /** The one that worked last; those that died while they rested are forgotten. */
  function takeFree(): Child | undefined {
    for (;;) {
      const child = free.pop();
      if (child === undefined || child.alive()) return child;
    }
  }

  async function run(name: string, task: unknown, milliseconds: number): Promise<unknown> {
    const child = takeFree() ?? startChild(settings);
    child.rest(null);
    try {
      return await child.ask({ name, task }, milliseconds);
    } finally {
      if (child.alive()) {
        free.push(child);
        child.rest(setTimeout(() => leave(child), settings.idle).unref());
      }
    }
  }

  return {
    run: (name, task, milliseconds) => {
      const work = run(name, task, milliseconds);
      const settled = work.then(
        () => undefined,
        () => undefined,
      );
      atWork.add(settled);
      void settled.then(() => atWork.delete(settled));
      return work;
    },
    close: async () => {
      await Promise.all(atWork);
      for (const child of [...free]) leave(child);
    },
  };
}

interface Child {
  ask(message: { name: string; task: unknown }, milliseconds: number): Promise<unknown>;
  alive(): boolean;
  /** Takes the clock that ends it while it has nothing to do; the one before is stopped. */
  rest(clock: NodeJS.Timeout | null): void;
  end(): void;
}

function startChild(settings: ProcessSettings): Child {
  const child = startProcess(settings);
  let isAlive = true;
  let resting: NodeJS.Timeout | null = null;
  let settle: ((answer: Served | Stopped) => void) | null = null;
  const answered = (answer: Served | Stopped): void => {
    settle?.(answer);
    settle = null;
  };
  const broke = (): void => {
    isAlive = false;
    answered(new Stopped('broke'));
  };
  child.on('message', (message) => answered(message as Served));
  child.on('exit', broke);
  child.on('error', broke);

  return {
    ask: async (message, milliseconds) => {
      const answer = await new Promise<Served | Stopped>((resolve) => {
        const clock = setTimeout(() => {
          isAlive = false;
          child.kill('SIGKILL');
          answered(new Stopped('time'));
        }, milliseconds);
        settle = (served) => {
          clearTimeout(clock);
          resolve(served);
        };
        if (isAlive) child.send(message, (fault) => fault !== null && broke());
        else broke();
      });
      if (answer instanceof Stopped) throw answer;
      if ('fault' in answer) throw answer.fault;
      return answer.value;
    },
    alive: () => isAlive,
    rest: (clock) => {
      if (resting !== null) clearTimeout(resting);
      resting = clock;
    },
    end: () => {
      isAlive = false;
      if (child.connected) child.disconnect();
    },
  };
}

const SHELL = '/bin/sh';
/** Elsewhere the kernel holds no such limit (macOS takes it and does not keep to it). */
const LIMITS_DATA = process.platform === 'linux' && existsSync(SHELL);

function startProcess({ server, module, execArgv, megabytes }: ProcessSettings): ChildProcess {
  const node = [
    process.execPath,
    `--max-old-space-size=${Math.round(megabytes / 2)}`,
    ...execArgv,
    fileURLToPath(server),
    module.href,
  ];
  const [command, ...words] = LIMITS_DATA
    ? [SHELL, '-c', `ulimit -d ${1024 * megabytes} && exec "$@"`, 'sh', ...node]
    : node;
  const child = spawn(command!, words, {
    // Decoders write what they think of a broken picture to standard output; the answer says it in words.
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    serialization: 'advanced',
  });
  if (child.pid !== undefined) giveWay(child.pid);
  return child;
}

/** On a busy computer the service answers first; a process that has ended already needs no turn. */
function giveWay(pid: number): void {
  try {
    setPriority(pid, LATER);
  } catch {
    return;
  }
}

const LATER = 10;
