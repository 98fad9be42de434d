import type { VNode } from 'preact';
import type { Supply } from '../../server/contract/supplies.ts';
import { suppliesWords } from '../words/supplies.ts';
import { supplyPhotos } from '../wire/shelves.ts';

interface Props {
  readonly supplies: readonly Supply[];
  readonly open: (photo: string) => void;
}

/** The photos that supplies were found in: touch one to show which scraps lie in it. */
export function SupplyPhotos({ supplies, open }: Props): VNode | null {
  const say = suppliesWords.photos;
  const found = (photo: string): number => supplies.filter((one) => one.photo === photo).length;
  const photos = (supplyPhotos.at('all').value.value ?? []).filter(
    ({ id, aside }) => found(id) > 0 || aside.length > 0,
  );
  if (photos.length === 0) return null;
  return (
    <section aria-label={say.heading}>
      <h2>{say.heading}</h2>
      <ul class="supply-photos">
        {photos.map(({ id, picture, width, height, chips }, index) => (
          <li key={id}>
            <button type="button" class="supply-photo" onClick={() => open(id)}>
              <img src={picture} alt="" width={width} height={height} loading="lazy" />
              <span class="small">
                {say.of(index + 1, found(id))}
                {chips.tie === 'tied' && <>, {say.tied}</>}
                <span class="unseen">. {say.open}</span>
              </span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
