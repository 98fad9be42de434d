import { setImmediate } from 'node:timers/promises';
import { pathToFileURL } from 'node:url';
import { createClient } from '@libsql/client';
import type { Client, InArgs, Transaction } from '@libsql/client';
import { SqliteAdapter, SqliteIntrospector, SqliteQueryCompiler } from 'kysely';
import type {
  CompiledQuery,
  DatabaseConnection,
  DatabaseIntrospector,
  Dialect,
  DialectAdapter,
  Driver,
  Kysely,
  QueryCompiler,
  QueryResult,
} from 'kysely';

/** How long a statement waits for a lock that another connection holds, in milliseconds. */
const PATIENCE = 5000;

/** A client on one database file. */
export function openFile(path: string, patience = PATIENCE): Client {
  try {
    return createClient({ url: pathToFileURL(path).href, timeout: patience });
  } catch (fault) {
    throw withCode(fault);
  }
}

/** Of a file that it cannot open the client tells SQLite's number within the message alone: SQLITE_CANTOPEN is 14. */
function withCode(fault: unknown): unknown {
  const isShut = fault instanceof Error && /^ConnectionFailed\(.*: 14"\)$/.test(fault.message);
  return isShut ? Object.assign(fault, { code: 'SQLITE_CANTOPEN' }) : fault;
}

/** Speaks SQLite to a file through libsql. Every transaction is a writing one, so that none fails half way. */
export class LibsqlDialect implements Dialect {
  readonly #client: Client;

  constructor(client: Client) {
    this.#client = client;
  }

  createDriver(): Driver {
    return new LibsqlDriver(this.#client);
  }

  createQueryCompiler(): QueryCompiler {
    return new SqliteQueryCompiler();
  }

  createAdapter(): DialectAdapter {
    return new SqliteAdapter();
  }

  createIntrospector(db: Kysely<unknown>): DatabaseIntrospector {
    return new SqliteIntrospector(db);
  }
}

/** So long questions may follow on one another before the event loop turns, in milliseconds. */
const TURN = 5;
let turned = 0;

/** SQLite answers within this thread and its promises are kept at once: a hundred questions would be one long stop. */
async function letOthersIn(): Promise<void> {
  if (performance.now() - turned < TURN) return;
  await setImmediate();
  turned = performance.now();
}

class LibsqlDriver implements Driver {
  readonly #client: Client;

  constructor(client: Client) {
    this.#client = client;
  }

  init(): Promise<void> {
    return Promise.resolve();
  }

  acquireConnection(): Promise<LibsqlConnection> {
    return Promise.resolve(new LibsqlConnection(this.#client));
  }

  async beginTransaction(connection: LibsqlConnection): Promise<void> {
    await connection.begin();
  }

  async commitTransaction(connection: LibsqlConnection): Promise<void> {
    await connection.commit();
  }

  async rollbackTransaction(connection: LibsqlConnection): Promise<void> {
    await connection.rollback();
  }

  releaseConnection(): Promise<void> {
    return Promise.resolve();
  }

  destroy(): Promise<void> {
    this.#client.close();
    return Promise.resolve();
  }
}

class LibsqlConnection implements DatabaseConnection {
  readonly #client: Client;
  #transaction: Transaction | null = null;

  constructor(client: Client) {
    this.#client = client;
  }

  async begin(): Promise<void> {
    this.#transaction = await this.#client.transaction('write');
  }

  async commit(): Promise<void> {
    await letOthersIn();
    await this.#transaction?.commit();
    this.#transaction = null;
  }

  async rollback(): Promise<void> {
    await this.#transaction?.rollback();
    this.#transaction = null;
  }

  async executeQuery<Row>({ sql, parameters }: CompiledQuery): Promise<QueryResult<Row>> {
    await letOthersIn();
    const answer = await (this.#transaction ?? this.#client).execute({
      sql,
      args: parameters as InArgs,
    });
    return {
      rows: answer.rows as unknown as Row[],
      numAffectedRows: BigInt(answer.rowsAffected),
    };
  }

  async *streamQuery<Row>(): AsyncIterableIterator<QueryResult<Row>> {
    await Promise.reject(new Error('Rows are read all at once.'));
  }
}
