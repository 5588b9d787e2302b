import { describe, expect, test } from 'vitest';
import { readEnvironment } from '../src/environment.ts';

describe('the environment', () => {
  test('may say nothing, or nothing but empty words', () => {
    const none = { hosts: [], isOneDesk: true, backups: null, publicAddress: null, publicPath: '', isLogged: false };
    const defaults = { host: '127.0.0.1', port: 3000, databaseUrl: 'file:data/mould-rota.db', ...none };
    expect(readEnvironment({})).toEqual({ ok: true, environment: defaults });
    const empty = {
      HOST: '',
      PORT: '',
      DATABASE_URL: '',
      DATABASE_TOKEN: '',
      MOULD_ROTA_HOSTS: ' ',
      PUBLIC_ADDRESS: '',
    };
    expect(readEnvironment(empty)).toEqual({ ok: true, environment: defaults });
  });

  test('is taken as it is given', () => {
    const values = { HOST: '::', PORT: '80', DATABASE_URL: 'libsql://yard.example', DATABASE_TOKEN: 'abc' };
    const environment = { host: '::', port: 80, databaseUrl: 'libsql://yard.example', databaseToken: 'abc' };
    expect(readEnvironment(values)).toMatchObject({ ok: true, environment });
    expect(
      readEnvironment({
        MOULD_ROTA_HOSTS: 'Rota.Example, desk.local [fd00::1]',
        PUBLIC_ADDRESS: 'https://Rota.Example/',
      }),
    ).toMatchObject({
      ok: true,
      environment: {
        hosts: ['rota.example', 'desk.local', '[fd00::1]'],
        publicAddress: 'https://rota.example',
        publicPath: '',
      },
    });
    for (const address of ['https://Yard.example/rota', 'https://yard.example/rota/'])
      expect(readEnvironment({ PUBLIC_ADDRESS: address })).toMatchObject({
        ok: true,
        environment: { publicAddress: 'https://yard.example', publicPath: '/rota' },
      });
    for (const [host, hosts] of Object.entries({
      'Desk.local': ['desk.local'],
      '0.0.0.0': [],
      '::1': [],
      'fd00::1': ['[fd00::1]'],
    }))
      expect(readEnvironment({ HOST: host })).toMatchObject({ ok: true, environment: { hosts } });
    for (const open of [
      { HOST: '0.0.0.0' },
      { HOST: '::' },
      { HOST: '192.168.1.20' },
      { MOULD_ROTA_HOSTS: 'a.example' },
      { PUBLIC_ADDRESS: 'http://a.example' },
    ])
      expect([open, readEnvironment(open)]).toMatchObject([open, { ok: true, environment: { isOneDesk: false } }]);
    for (const host of ['localhost', '127.0.0.1', '::1'])
      expect(readEnvironment({ HOST: host })).toMatchObject({ ok: true, environment: { isOneDesk: true } });
    expect(readEnvironment({ BACKUP_FOLDER: '/srv/nights', BACKUPS_KEPT: '30' })).toMatchObject({
      ok: true,
      environment: { backups: { folder: '/srv/nights', kept: 30 } },
    });
    expect(readEnvironment({ LOG: 'json' })).toMatchObject({ ok: true, environment: { isLogged: true } });
    for (const wrong of [
      { LOG: 'all' },
      { BACKUPS_KEPT: '0' },
      { BACKUPS_KEPT: '2000' },
      { BACKUP_FOLDER: 'a', DATABASE_URL: 'https://a.example' },
      { DATABASE_URL: 'https://a.example', DATABASE_SYNC_URL: 'https://b.example' },
      { DATABASE_SYNC_URL: 'file:a.db' },
    ])
      expect([wrong, readEnvironment(wrong).ok]).toEqual([wrong, false]);
    for (const url of ['http://127.0.0.1:8080', 'https://yard.example', 'file:/tmp/a b.db'])
      expect(readEnvironment({ DATABASE_URL: url })).toMatchObject({ ok: true, environment: { databaseUrl: url } });
  });

  test('is refused with a word for everything that is wrong', () => {
    expect(readEnvironment({ HOST: 'my host', PORT: '3000x', DATABASE_URL: 'yard.db' })).toEqual({
      ok: false,
      faults: [
        'HOST has to be a name or an address without spaces, but is "my host".',
        'PORT has to be a whole number from 0 to 65535 (0 takes any free one), but is "3000x".',
        'DATABASE_URL has to be a file: path or a libsql:, http: or https: address, but is "yard.db".',
      ],
    });
    for (const name of ['rota.example:3000', 'https://rota.example', 'a/b', 'a@b', '*'])
      expect([name, readEnvironment({ MOULD_ROTA_HOSTS: name })]).toMatchObject([name, { ok: false }]);
    for (const address of [
      ...['rota.example', 'ftp://rota.example', 'https://a@rota.example', 'https://rota.example/?a=1'],
      ...[
        'https://rota.example/a/../b',
        'https://rota.example//a',
        'https://rota.example/a b',
        'https://rota.example/a*',
      ],
    ])
      expect([address, readEnvironment({ PUBLIC_ADDRESS: address }).ok]).toEqual([address, false]);
    for (const port of ['65536', '-1', '1.5', '999999']) expect(readEnvironment({ PORT: port }).ok).toBe(false);
    expect(readEnvironment({ DATABASE_TOKEN: 'abc' }).ok).toBe(false);
  });
});
