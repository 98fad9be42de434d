import type { CutPlan } from '../../../server/cutting/packings.ts';
import type { Market, Worth } from './worth.ts';

/** How often `until` is asked. */
const ASK_EVERY = 64;

/** Parts of one width and height, the most valuable first. */
interface Bucket {
  readonly width: number;
  readonly height: number;
  /** Numbers of builds. */
  builds: number[];
  /** Value of the first build. */
  most: number;
}

/** Parts put together from pieces, kept only while they may still lead above a value. */
export class Builds {
  /** Value of the best part found that is above the floor, or 0. */
  value = 0;
  #best = -1;
  #floor: number;
  readonly #market: Market;
  readonly #worth: Worth;
  readonly #kinds: number;
  /** Wares by value for their area, the dearest first, for the bound on what is still at hand. */
  readonly #dearest: readonly number[];
  readonly #values: number[] = [];
  /** Row a build: how many of each ware it holds. */
  #counts = new Uint8Array(1 << 16);
  /** First part, second part and way; of a single piece the ware, -1 and 0. */
  readonly #first: number[] = [];
  readonly #second: number[] = [];
  readonly #way: number[] = [];
  readonly #open = new Map<number, Bucket>();
  readonly #queue: number[] = [];
  readonly #closed: Bucket[] = [];

  constructor(market: Market, worth: Worth, floor: number) {
    this.#market = market;
    this.#worth = worth;
    this.#kinds = market.wares.length;
    this.#floor = floor;
    const density = market.wares.map(({ value, width, height }) => value / (width * height));
    this.#dearest = density.map((_, ware) => ware).sort((a, b) => density[b]! - density[a]!);
  }

  /** Puts parts together until none is left; false when `until` ended it before. */
  search(until: () => boolean): boolean {
    this.#market.wares.forEach((ware, index) => {
      if (ware.most > 0 && ware.width <= this.#market.width && ware.height <= this.#market.height)
        this.#single(index);
    });
    let asked = 0;
    for (let bucket = this.#smallest(); bucket !== null; bucket = this.#smallest()) {
      this.#thin(bucket);
      if (bucket.builds.length === 0) continue;
      this.#closed.push(bucket);
      for (const other of this.#closed) {
        if (++asked % ASK_EVERY === 0 && until()) return false;
        this.#beside(bucket, other);
        this.#above(bucket, other);
      }
    }
    return true;
  }

  cuts(): CutPlan | null {
    return this.#best < 0 ? null : this.#cutsOf(this.#best);
  }

  #cutsOf(build: number): CutPlan {
    const [first, second] = [this.#first[build]!, this.#second[build]!];
    if (second < 0) return { kind: first, turned: false };
    const way = this.#way[build] === 0 ? 'vertical' : 'horizontal';
    return { way, first: this.#cutsOf(first), second: this.#cutsOf(second) };
  }

  #single(ware: number): void {
    const { width, height, value } = this.#market.wares[ware]!;
    if (value + this.#around(width, height) <= this.#floor) return;
    const build = this.#grow();
    this.#counts[build * this.#kinds + ware] = 1;
    this.#keep(build, value, ware, -1, 0, width, height);
  }

  #beside(a: Bucket, b: Bucket): void {
    const width = a.width + b.width;
    if (width > this.#market.width) return;
    this.#joinAll(a, b, width, Math.max(a.height, b.height), 0);
  }

  #above(a: Bucket, b: Bucket): void {
    const height = a.height + b.height;
    if (height > this.#market.height) return;
    this.#joinAll(a, b, Math.max(a.width, b.width), height, 1);
  }

  #joinAll(a: Bucket, b: Bucket, width: number, height: number, way: number): void {
    const around = this.#around(width, height);
    if (a.most + b.most + around <= this.#floor) return;
    const values = this.#values;
    for (let i = 0; i < a.builds.length; i++) {
      const one = a.builds[i]!;
      if (values[one]! + b.most + around <= this.#floor) break;
      for (let j = a === b ? i : 0; j < b.builds.length; j++) {
        const other = b.builds[j]!;
        const value = values[one]! + values[other]!;
        if (value + around <= this.#floor) break;
        this.#join(one, other, value, width, height, way);
      }
    }
  }

  #join(
    one: number,
    other: number,
    value: number,
    width: number,
    height: number,
    way: number,
  ): void {
    const build = this.#grow();
    const [to, a, b, kinds] = [
      build * this.#kinds,
      one * this.#kinds,
      other * this.#kinds,
      this.#kinds,
    ];
    const { wares } = this.#market;
    for (let ware = 0; ware < kinds; ware++) {
      const count = this.#counts[a + ware]! + this.#counts[b + ware]!;
      if (count > wares[ware]!.most) return;
      this.#counts[to + ware] = count;
    }
    if (value + this.#stillAtHand(to, width, height) <= this.#floor) return;
    this.#keep(build, value, one, other, way, width, height);
  }

  /** What the copies not yet used are worth on the rest of the sheet by area, fractions allowed. */
  #stillAtHand(row: number, width: number, height: number): number {
    const { wares } = this.#market;
    let room = this.#market.width * this.#market.height - width * height;
    let sum = 0;
    for (const ware of this.#dearest) {
      const { most, value, width: w, height: h } = wares[ware]!;
      const left = most - this.#counts[row + ware]!;
      const area = left * w * h;
      if (left === 0) continue;
      if (area >= room) return sum + (value * room) / (w * h);
      sum += left * value;
      room -= area;
    }
    return sum;
  }

  #keep(
    build: number,
    value: number,
    first: number,
    second: number,
    way: number,
    width: number,
    height: number,
  ): void {
    const key = width * (this.#market.height + 1) + height;
    let bucket = this.#open.get(key);
    if (bucket === undefined) {
      bucket = { width, height, builds: [], most: 0 };
      this.#open.set(key, bucket);
      this.#push(key);
    }
    this.#values.push(value);
    this.#first.push(first);
    this.#second.push(second);
    this.#way.push(way);
    bucket.builds.push(build);
    if (value > this.value) [this.value, this.#best] = [value, build];
    if (value > this.#floor) this.#floor = value;
  }

  /** Keeps of a bucket only builds that no other of it beats with the same or fewer pieces. */
  #thin(bucket: Bucket): void {
    const around = this.#around(bucket.width, bucket.height);
    const values = this.#values;
    const order = bucket.builds
      .filter((build) => values[build]! + around > this.#floor)
      .sort((a, b) => values[b]! - values[a]! || a - b);
    const kept: number[] = [];
    for (const build of order)
      if (!kept.some((better) => this.#covers(better, build))) kept.push(build);
    bucket.builds = kept;
    bucket.most = kept.length > 0 ? values[kept[0]!]! : 0;
  }

  #covers(better: number, build: number): boolean {
    const [a, b] = [better * this.#kinds, build * this.#kinds];
    for (let ware = 0; ware < this.#kinds; ware++)
      if (this.#counts[a + ware]! > this.#counts[b + ware]!) return false;
    return true;
  }

  #around(width: number, height: number): number {
    const { around, xAt, yAt, ys } = this.#worth;
    return around[xAt[width]! * ys.length + yAt[height]!]!;
  }

  /** Room for one more build; its number. */
  #grow(): number {
    const build = this.#values.length;
    const needed = (build + 1) * this.#kinds;
    if (needed > this.#counts.length) {
      const larger = new Uint8Array(this.#counts.length * 2);
      larger.set(this.#counts);
      this.#counts = larger;
    }
    this.#counts.fill(0, build * this.#kinds, needed);
    return build;
  }

  // A heap of bucket keys by area: a part is only ever put together from parts of less area.

  #areaOf(key: number): number {
    const { width, height } = this.#open.get(key)!;
    return width * height;
  }

  #push(key: number): void {
    const queue = this.#queue;
    let at = queue.push(key) - 1;
    while (at > 0) {
      const up = (at - 1) >> 1;
      if (this.#areaOf(queue[up]!) <= this.#areaOf(key)) break;
      queue[at] = queue[up]!;
      at = up;
    }
    queue[at] = key;
  }

  #smallest(): Bucket | null {
    const queue = this.#queue;
    const top = queue[0];
    if (top === undefined) return null;
    const last = queue.pop()!;
    if (queue.length > 0) this.#sink(last);
    const bucket = this.#open.get(top)!;
    this.#open.delete(top);
    return bucket;
  }

  #sink(key: number): void {
    const queue = this.#queue;
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= queue.length) break;
      if (down + 1 < queue.length && this.#areaOf(queue[down + 1]!) < this.#areaOf(queue[down]!))
        down++;
      if (this.#areaOf(queue[down]!) >= this.#areaOf(key)) break;
      queue[at] = queue[down]!;
      at = down;
    }
    queue[at] = key;
  }
}
