import { useState } from 'preact/hooks';
import type { VNode } from 'preact';
import { settingsWords } from '../words/settings.ts';
import { words } from '../words/words.ts';
import { isPhone } from '../wire/is-phone.ts';
import { pads } from '../wire/shelves.ts';
import { Icon } from './icon.tsx';
import { Link } from './link.tsx';
import { Mark } from './mark.tsx';
import { SettingsSheet } from './settings-sheet.tsx';
import { place, stations, type Place, type Station } from './way.ts';
import { planOf } from '../plan/made.ts';

/** The ruler at the top of the table: where the pad is named and the stations are marked in order. */
export function Masthead(): VNode {
  const [open, setOpen] = useState(false);
  const here = place.value;
  const pad = here.at === 'pads' ? null : here.pad;
  return (
    <header class="masthead">
      <div class="masthead-line">
        <Link to={{ at: 'pads' }} class="mark" label={words.home}>
          <Mark />
          <span>{words.name}</span>
        </Link>
        {pad !== null && <PadName pad={pad} />}
        {!isPhone() && (
          <Link
            to={{ at: 'supplies', pad }}
            class="round wide"
            current={here.at === 'supplies'}
            label={words.stations.supplies}
          >
            <Icon name="supplies" />
            <span>{words.stations.supplies}</span>
          </Link>
        )}
        <button
          type="button"
          class="round"
          aria-label={settingsWords.title}
          onClick={() => setOpen(true)}
        >
          <Icon name="settings" />
        </button>
      </div>
      {pad !== null && <Stations here={here} pad={pad} />}
      {open && <SettingsSheet close={() => setOpen(false)} />}
    </header>
  );
}

function opened(station: Station): boolean {
  return !isPhone() || station === 'photos' || station === 'pad';
}

function PadName({ pad }: { pad: string }): VNode {
  return <span class="pad-name">{pads.at(pad).value.value?.name ?? ''}</span>;
}

function Stations({ here, pad }: { here: Place; pad: string }): VNode {
  return (
    <nav class="stations" aria-label={words.stationsLabel}>
      {stations.filter(opened).map((at, index) => {
        const needsPlan = at === 'plan' || at === 'guide';
        const to: Place = { at, pad, plan: needsPlan ? planOf(pad) : null };
        return (
          <Link key={at} to={to} class="station" current={here.at === at}>
            <Icon name={at} />
            <span>
              <span class="station-number">{index + 1}</span> {words.stations[at]}
            </span>
          </Link>
        );
      })}
    </nav>
  );
}
