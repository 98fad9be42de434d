import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import type { Service } from './edges.ts';

/** Questions that one device may ask in a minute; a page full of swatches asks some hundred at once. */
const A_MINUTE = 60_000;

export async function secure(app: Service): Promise<void> {
  await app.register(helmet, {
    contentSecurityPolicy: {
      useDefaults: false,
      directives: {
        defaultSrc: ["'self'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        workerSrc: ["'self'"],
        manifestSrc: ["'self'"],
        objectSrc: ["'none'"],
        baseUri: ["'none'"],
        formAction: ["'self'"],
        frameAncestors: ["'none'"],
      },
    },
    crossOriginResourcePolicy: { policy: 'same-origin' },
    // Served over plain http on the own computer, where this header means nothing.
    strictTransportSecurity: false,
    referrerPolicy: { policy: 'no-referrer' },
  });
  await app.register(rateLimit, { max: A_MINUTE, timeWindow: '1 minute' });
}

/** For routes that make the machine work: reading photos, planning. */
export const LABOUR = { rateLimit: { max: 1200, timeWindow: '1 minute' } };
