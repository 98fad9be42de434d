/** Opens the data folder named on the command line, keeps a pad in it, says so and holds on until it is killed. */
import { INCH, units } from '../../server/lengths/length.ts';
import { openStore } from '../../server/store/open-store.ts';

const store = await openStore(process.argv[2]!);
const six = units(6 * INCH);
await store.write((records) =>
  records.pads.add({
    id: 'held',
    name: 'Pad held',
    sheetSize: { width: six, height: six },
    createdAt: '2026-01-02T03:04:05.000Z',
    revision: 1,
  }),
);
console.log('held');
setInterval(() => null, 1000);
