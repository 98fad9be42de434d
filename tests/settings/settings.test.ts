import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { WrongSetting, inRoot, readSettings } from '../../server/settings.ts';

const SHARED = {
  DATABASE_URL: 'postgres://plyhue@db.example/plyhue',
  PHOTOS_URL: 's3://plyhue/photos?endpoint=https://s3.example',
};

describe('settings', () => {
  test('left out, or left empty, are those of one person on her own computer', () => {
    const own = {
      port: 7443,
      host: '127.0.0.1',
      dataFolder: inRoot('.data'),
      demo: true,
      photoProcesses: null,
      shared: null,
    };
    expect(readSettings({})).toEqual(own);
    expect(readSettings({ PORT: '', HOST: '', DATA_DIR: '', DEMO: '' })).toEqual(own);
  });

  test('are taken as they are given', () => {
    const given = { PORT: '0', HOST: '::1', DATA_DIR: 'pads', DEMO: 'off', PHOTO_PROCESSES: '3' };
    expect(readSettings(given)).toEqual({
      port: 0,
      host: '::1',
      dataFolder: join(process.cwd(), 'pads'),
      demo: false,
      photoProcesses: 3,
      shared: null,
    });
  });

  test('a shared store starts without the demo pad, unless it is asked for', () => {
    const { demo, shared } = readSettings(SHARED);
    expect(demo).toBe(false);
    expect(shared?.database).toBe(SHARED.DATABASE_URL);
    expect(readSettings({ ...SHARED, DEMO: 'on' }).demo).toBe(true);
  });

  test.each([
    [{ PORT: '70000' }, 'Expected a whole number from 0 to 65535 for PORT but received "70000".'],
    [{ PORT: 'http' }, 'Expected a whole number from 0 to 65535 for PORT but received "http".'],
    [{ HOST: 'not a host' }, 'for HOST but received "not a host".'],
    [{ DEMO: 'yes' }, 'Expected "on" or "off" for DEMO but received "yes".'],
    [{ PHOTO_PROCESSES: '0' }, 'Expected a whole number from 1 to 16 for PHOTO_PROCESSES'],
    [{ PHOTO_PROCESSES: '99' }, 'Expected a whole number from 1 to 16 for PHOTO_PROCESSES'],
    [{ ...SHARED, DATABASE_URL: 'mysql://db' }, 'Expected an address like postgres://'],
    [{ ...SHARED, PHOTOS_URL: '/srv/photos' }, 'Expected an address like s3://'],
    [{ DATABASE_URL: SHARED.DATABASE_URL }, 'together but received only DATABASE_URL'],
    [{ PHOTOS_URL: SHARED.PHOTOS_URL }, 'together but received only PHOTOS_URL'],
  ])('that cannot be used stop the start in words: %j', (given, words) => {
    expect(() => readSettings(given)).toThrow(WrongSetting);
    expect(() => readSettings(given)).toThrow(words);
  });

  test('two that are wrong are both told', () => {
    expect(() => readSettings({ PORT: 'x', DEMO: 'y' })).toThrow(/PORT[^]*DEMO/);
  });
});
