import { AsyncResource } from 'node:async_hooks';
import { EventEmitter } from 'node:events';
import type { Store } from '../store/open-store.ts';

/** Who looks at a pad is told when it has changed. */
export interface Changes {
  tell(pad: string): void;
  /** Calls back at each change until the returned function is called. */
  watch(pad: string, call: () => void): () => void;
  watching(): number;
}

/** News goes by way of the store, so that who looks through another process hears of it too. */
export async function createChanges(store: Pick<Store, 'tell' | 'hear'>): Promise<Changes> {
  const emitter = new EventEmitter();
  emitter.setMaxListeners(0);
  let watching = 0;
  const name = (pad: string): string => `pad ${pad}`;
  await store.hear((pad) => void emitter.emit(name(pad)));
  return {
    tell: (pad) => store.tell(pad),
    watch: (pad, told) => {
      // Who watches is asked for when it is told, not who made the change.
      const call = AsyncResource.bind(told);
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
