import { useMemo } from 'preact/hooks';
import type { VNode } from 'preact';
import type { CardPicture } from './card-pictures.ts';

interface Props {
  readonly picture: CardPicture;
  /** What it is called; empty where its words stand elsewhere, so that it is only to be looked at. */
  readonly label: string;
}

/**
 * The picture of a card. Its drawing lies in the page itself: as an image of its own it would be a page of its
 * own to the browser, which would read and decode its papers once more for every card.
 */
export function DrawnCard({ picture, label }: Props): VNode {
  const svg = useMemo(() => withOwnNames(picture.svg ?? ''), [picture]);
  if (picture.svg === undefined)
    return <img class="drawn-card" src={picture.address} alt={label} draggable={false} />;
  const said =
    label === '' ? { 'aria-hidden': true } : { role: 'img' as const, 'aria-label': label };
  return <span class="drawn-card" {...said} dangerouslySetInnerHTML={{ __html: svg }} />;
}

let drawn = 0;

/** Names within a drawing are told apart from those of all others on the page. Inside its text a quote is always escaped. */
function withOwnNames(svg: string): string {
  const own = `drawn-${++drawn}-`;
  return svg.replaceAll(/( id="|href="#|="url\(#)/g, `$1${own}`);
}
