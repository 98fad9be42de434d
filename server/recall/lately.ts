/** Values asked for last, at most so many; the one that was longest not asked for makes room. */
export class Lately<Key, Value> {
  readonly #most: number;
  readonly #kept = new Map<Key, Value>();

  constructor(most: number) {
    this.#most = most;
  }

  at(key: Key): Value | undefined {
    return this.#kept.get(key);
  }

  put(key: Key, value: Value): void {
    this.#kept.delete(key);
    this.#kept.set(key, value);
    for (const oldest of this.#kept.keys()) {
      if (this.#kept.size <= this.#most) return;
      this.#kept.delete(oldest);
    }
  }

  drop(key: Key): void {
    this.#kept.delete(key);
  }
}
