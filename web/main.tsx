import { render } from 'preact';
import './look/index.css';
import { takeUp } from './photos/queue.ts';
import { App } from './table/app.tsx';

const table = document.getElementById('table');
if (table) render(<App />, table);
void takeUp();

if ('serviceWorker' in navigator && import.meta.env.PROD) {
  addEventListener('load', () => {
    // Without it (plain http on the home network) the page works, only not when the service is away.
    navigator.serviceWorker.register('/offline-worker.js').catch(() => undefined);
  });
}
