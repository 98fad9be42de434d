import { useEffect, useRef } from 'preact/hooks';
import type { VNode } from 'preact';
import { PadsScreen } from '../pad/pads-screen.tsx';
import { padsWords } from '../words/pads.ts';
import { words } from '../words/words.ts';
import { Announcer } from './announce.tsx';
import { Masthead } from './masthead.tsx';
import { Guarded } from './mishap.tsx';
import { screens } from './screens.ts';
import { place, type Place } from './way.ts';
import './whole-figures.ts';

/** The whole page: the ruler at the top, one station below it. */
export function App(): VNode {
  const here = place.value;
  const screen = here.at === 'pads' ? 'pads' : `${here.at}/${here.pad ?? ''}`;
  const work = useRef<HTMLElement>(null);
  const before = useRef(screen);
  useEffect(() => {
    document.title = words.titleOf(here.at === 'pads' ? padsWords.title : words.stations[here.at]);
    // Who goes to another station by keyboard or by ear stands at its beginning.
    if (before.current !== screen) work.current?.focus({ preventScroll: true });
    before.current = screen;
  }, [screen]);
  return (
    <>
      <a class="skip" href="#work">
        {words.skip}
      </a>
      <Masthead />
      <main id="work" ref={work} tabIndex={-1}>
        <Guarded key={screen}>
          <Screen here={here} />
        </Guarded>
      </main>
      <Announcer />
    </>
  );
}

function Screen({ here }: { here: Place }): VNode {
  switch (here.at) {
    case 'pads':
      return <PadsScreen />;
    case 'supplies':
      return <screens.supplies.Part pad={here.pad} />;
    case 'photos':
      return <screens.photos.Part pad={here.pad} />;
    case 'pad':
      return <screens.pad.Part pad={here.pad} />;
    case 'cards':
      return <screens.cards.Part pad={here.pad} />;
    case 'plan':
      return <screens.plan.Part pad={here.pad} plan={here.plan} />;
    case 'guide':
      return <screens.guide.Part pad={here.pad} plan={here.plan} />;
  }
}
