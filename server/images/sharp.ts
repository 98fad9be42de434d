import sharp from 'sharp';

/**
 * sharp with all loaders shut but those for photos in memory and for our own drawings.
 *
 * The SVG loader has to stay for the drawings of cards. An upload never reaches it: `kindOfFile` lets
 * only bytes pass that start with the signature of a photo, which is no text an SVG could start with.
 */
sharp.block({ operation: ['VipsForeignLoad'] });
sharp.unblock({
  operation: [
    'VipsForeignLoadJpegBuffer',
    'VipsForeignLoadPngBuffer',
    'VipsForeignLoadWebpBuffer',
    'VipsForeignLoadHeifBuffer',
    'VipsForeignLoadSvgBuffer',
  ],
});
// One picture at a time in each worker: decoded photos are large and none is opened twice.
sharp.cache(false);
sharp.concurrency(1);

export { sharp };
