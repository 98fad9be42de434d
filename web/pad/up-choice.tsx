import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import type { Side, SidePatch } from '../../server/contract/pads.ts';
import type { Problem } from '../../server/contract/values.ts';
import { announce } from '../table/announce.tsx';
import { Icon } from '../table/icon.tsx';
import { Mishap } from '../table/mishap.tsx';
import { padWords } from '../words/pad.ts';
import { asProblem } from '../wire/ask.ts';
import { service } from '../wire/service.ts';
import { companions, pads } from '../wire/shelves.ts';
import { swatchAt } from './swatch-at.ts';

const turns = [0, 90, 180, 270] as const;

/** Which way a print is up: the paper turned in quarter turns, and she touches the one that stands. */
export function UpChoice({ pad, side }: { pad: string; side: Side }): VNode {
  const [wanted, setWanted] = useState<SidePatch['up'] | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const { direction, up } = side.pattern;
  // A print that fits upside down as well stands in two of these: none of them is the one.
  const read = { none: 'none', 'two-way': null, 'one-way': up } as const;
  const now = wanted ?? read[direction];

  async function say(next: NonNullable<SidePatch['up']>): Promise<void> {
    setWanted(next);
    setProblem(null);
    try {
      await service.sayUp(side.id, next);
      await pads.fresh(pad);
      companions.freshAll();
      announce(padWords.up.saved);
    } catch (fault) {
      setProblem(asProblem(fault));
    }
    setWanted(null);
  }

  return (
    <fieldset class="up-choice">
      <legend>{padWords.up.question}</legend>
      <div class="up-turns">
        {turns.map((turn) => (
          <button
            key={turn}
            type="button"
            class="swatch-button"
            aria-pressed={now === turn}
            aria-label={padWords.up.turns[turn]}
            disabled={wanted !== null}
            onClick={() => void say(turn)}
          >
            <img
              src={swatchAt(side.swatch, 120)}
              alt=""
              style={{ transform: `rotate(${turn}deg)` }}
            />
            <Icon name="up" />
          </button>
        ))}
        <button
          type="button"
          class="swatch-button no-up"
          aria-pressed={now === 'none'}
          disabled={wanted !== null}
          onClick={() => void say('none')}
        >
          {padWords.up.none}
        </button>
      </div>
      {problem && <Mishap problem={problem} />}
    </fieldset>
  );
}
