import { signal } from '@preact/signals';
import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import { UsePhone } from '../phone/use-phone.tsx';
import { ChoiceRow } from '../table/choice-row.tsx';
import { photosWords } from '../words/photos.ts';
import { FileButton } from './file-button.tsx';
import { enqueue } from './queue.ts';
import { RefusedPhotos } from './refused-photos.tsx';
import { sendings } from './sending.ts';
import { sortPhotos, type SortedBy } from './sort-photos.ts';
import { berthsFor, orders, type Order } from './tablefuls.ts';

const order = signal<Order>('in-turn');

/** Where photos are dropped, chosen or taken; several at once, in the order in which they were taken. */
export function PhotoIntake({ pad }: { pad: Pad }): VNode {
  const [over, setOver] = useState(false);
  const [sorted, setSorted] = useState('');

  function take(files: readonly File[]): void {
    const { inTurn, by } = sortPhotos(files);
    const mine = sendings.peek().filter((one) => one.pad === pad.id);
    const berths = berthsFor(inTurn, order.peek(), pad, mine);
    setSorted(sortedWords(inTurn.length, by));
    enqueue(
      pad.id,
      inTurn.map(({ photo }) => photo),
      berths,
    );
  }

  return (
    <section
      class={over ? 'intake over' : 'intake'}
      aria-label={photosWords.intake}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        take([...(event.dataTransfer?.files ?? [])]);
      }}
    >
      <div class="intake-buttons">
        <FileButton icon="photos" take={take} camera>
          {photosWords.camera}
        </FileButton>
        <FileButton icon="plus" take={take} several>
          {photosWords.choose}
        </FileButton>
        <UsePhone pad={pad.id} />
        <p class="drop-hint">{photosWords.drop}</p>
      </div>
      <ChoiceRow
        legend={photosWords.order}
        name="order"
        of={order}
        choices={orders}
        words={photosWords.orders}
      />
      <p role="status" class="small">
        {sorted}
      </p>
      <RefusedPhotos pad={pad.id} />
    </section>
  );
}

/** In one line, how photos were sorted; nothing where there was nothing to sort. */
function sortedWords(photos: number, by: SortedBy): string {
  if (order.peek() !== 'in-turn') return photosWords.sortedAs(photosWords.orders[order.peek()]);
  return photos < 2 && by !== 'names' ? '' : photosWords.sorted[by];
}
