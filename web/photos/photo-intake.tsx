import { signal } from '@preact/signals';
import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Pad } from '../../server/contract/pads.ts';
import { ChoiceRow } from '../table/choice-row.tsx';
import { words } from '../words.ts';
import { FileButton } from './file-button.tsx';
import { enqueue } from './queue.ts';
import { sendings } from './sending.ts';
import { berthsFor, orders, type Order } from './tablefuls.ts';

const order = signal<Order>('in-turn');

/** Where photos are dropped, chosen or taken; several at once, in the order in which they were taken. */
export function PhotoIntake({ pad }: { pad: Pad }): VNode {
  const [over, setOver] = useState(false);

  function take(files: readonly File[]): void {
    const inOrder = [...files].sort(
      (a, b) =>
        a.name.localeCompare(b.name, 'en', { numeric: true }) || a.lastModified - b.lastModified,
    );
    const mine = sendings.peek().filter((one) => one.pad === pad.id);
    enqueue(pad.id, inOrder, berthsFor(inOrder.length, order.peek(), pad, mine));
  }

  return (
    <section
      class={over ? 'intake over' : 'intake'}
      aria-label={words.photos.intake}
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
          {words.photos.camera}
        </FileButton>
        <FileButton icon="plus" take={take} several>
          {words.photos.choose}
        </FileButton>
        <p class="drop-hint">{words.photos.drop}</p>
      </div>
      <ChoiceRow
        legend={words.photos.order}
        name="order"
        of={order}
        choices={orders}
        words={words.photos.orders}
      />
    </section>
  );
}
