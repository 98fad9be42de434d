import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import { Icon } from '../table/icon.tsx';
import { Once } from '../table/waiting.tsx';
import { padsWords } from '../words/pads.ts';
import { padList } from '../wire/shelves.ts';
import { BringPad } from './bring-pad.tsx';
import { NewPadSheet } from './new-pad-sheet.tsx';
import { PadFactsSheet } from './pad-facts-sheet.tsx';
import { PadStack } from './pad-stack.tsx';
import { WayDrawn } from './way-drawn.tsx';

/** Where she begins: her pads as stacks of paper, and an empty place for a new one. */
export function PadsScreen(): VNode {
  const [starting, setStarting] = useState(false);
  const [open, setOpen] = useState<string | null>(null);
  return (
    <div class="screen">
      <h1>{padsWords.welcome}</h1>
      <p class="lead">{padsWords.lead}</p>
      <h2>{padsWords.heading}</h2>
      <Once of={padList.at('all')} again={() => void padList.fresh('all')}>
        {(list) => (
          <ul class="pads">
            {list.map((pad) => (
              <li key={pad.id} class="pad-place">
                <PadStack pad={pad} />
                <button
                  type="button"
                  class="round"
                  aria-label={padsWords.look(pad.name)}
                  onClick={() => setOpen(pad.id)}
                >
                  <Icon name="more" />
                </button>
                {open === pad.id && <PadFactsSheet pad={pad} close={() => setOpen(null)} />}
              </li>
            ))}
            <li>
              <button type="button" class="new-pad" onClick={() => setStarting(true)}>
                <Icon name="plus" />
                <span>{padsWords.start}</span>
              </button>
            </li>
          </ul>
        )}
      </Once>
      <BringPad />
      <h2>{padsWords.wayTitle}</h2>
      <WayDrawn />
      {starting && <NewPadSheet close={() => setStarting(false)} />}
    </div>
  );
}
