import { EventEmitter } from 'node:events';

/** Who looks at a pad is told when it has changed. */
export interface Changes {
  tell(pad: string): void;
  /** Calls back at each change until the returned function is called. */
  watch(pad: string, call: () => void): () => void;
  watching(): number;
}

export function createChanges(): Changes {
  const emitter = new EventEmitter();
  emitter.setMaxListeners(0);
  let watching = 0;
  const name = (pad: string): string => `pad ${pad}`;
  return {
    tell: (pad) => void emitter.emit(name(pad)),
    watch: (pad, call) => {
      emitter.on(name(pad), call);
      watching += 1;
      let stopped = false;
      return () => {
        if (stopped) return;
        stopped = true;
        watching -= 1;
        emitter.off(name(pad), call);
      };
    },
    watching: () => watching,
  };
}
