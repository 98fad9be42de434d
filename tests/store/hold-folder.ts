/** Opens the data folder named on the command line, keeps a pad in it, says so and holds on until it is killed. */
import { openStore } from '../../server/store/open-store.ts';
import { pad } from './pad-row.ts';

const store = await openStore(process.argv[2]!);
await store.write((records) => records.pads.add(pad('held')));
console.log('held');
setInterval(() => null, 1000);
