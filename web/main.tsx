import { render } from 'preact';
import './look/index.css';
import { retryLost, takeUp } from './photos/queue.ts';
import { onComingBack } from './table/coming-back.ts';
import { padList, pads, supplies } from './wire/shelves.ts';
import { App } from './table/app.tsx';

const table = document.getElementById('table');
if (table) render(<App />, table);
void takeUp();
onComingBack(() => {
  retryLost();
  for (const shelf of [padList, pads, supplies]) shelf.freshAll();
});

if ('serviceWorker' in navigator && import.meta.env.PROD) {
  addEventListener('load', () => {
    // Without it (plain http on the home network) the page works, only not when the service is away.
    navigator.serviceWorker.register('/offline-worker.js').catch(() => undefined);
  });
}
