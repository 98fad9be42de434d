import { later } from './later.tsx';
import { whenIdle } from './when-idle.ts';

/** The screens beside the first one: each is a file of its own. */
export const screens = {
  supplies: later(async () => (await import('../supplies/supplies-screen.tsx')).SuppliesScreen),
  photos: later(async () => (await import('../photos/photos-screen.tsx')).PhotosScreen),
  pad: later(async () => (await import('../pad/pad-screen.tsx')).PadScreen),
  cards: later(async () => (await import('../cards/cards-screen.tsx')).CardsScreen),
  plan: later(async () => (await import('../plan/plan-screen.tsx')).PlanScreen),
  guide: later(async () => (await import('../guide/guide-screen.tsx')).GuideScreen),
};

/**
 * Fetches the other screens once the one that she looks at stands, so that each opens at once, and also when
 * the service has gone away meanwhile. One that does not come is fetched when it is opened.
 */
export function fetchScreensAhead(): void {
  whenIdle(() => {
    for (const { ahead } of Object.values(screens)) ahead().catch(() => undefined);
  });
}
