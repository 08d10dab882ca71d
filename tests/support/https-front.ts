import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { request as ask } from 'node:http';
import { createSecureServer } from 'node:http2';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A service as a club runs it: behind something that speaks https. */
export interface HttpsFront {
  readonly url: string;
  end(): Promise<void>;
}

/** Headers of a connection, which HTTP/2 does not have. */
const ofConnection = new Set(['connection', 'keep-alive', 'proxy-connection', 'transfer-encoding', 'upgrade', 'host']);

/** Hands each request on to the service at `url`; its certificate is its own. Null where there is no `openssl` to make one. */
export async function openHttpsFront(url: string): Promise<HttpsFront | null> {
  const identity = makeIdentity();
  if (!identity) return null;
  const front = createSecureServer({ ...identity, allowHTTP1: true }, (incoming, answer) => {
    const headers = Object.entries(incoming.headers).filter(
      ([name]) => !name.startsWith(':') && !ofConnection.has(name),
    );
    const onward = ask(
      url + incoming.url,
      { method: incoming.method, headers: Object.fromEntries(headers) },
      (reply) => {
        const kept = Object.entries(reply.headers).filter(([name]) => !ofConnection.has(name));
        answer.writeHead(reply.statusCode ?? 502, Object.fromEntries(kept));
        reply.pipe(answer);
      },
    );
    onward.on('error', () => answer.stream.destroy());
    incoming.pipe(onward);
  });
  await new Promise<void>((resolve) => front.listen(0, '127.0.0.1', resolve));
  const sessions = new Set<{ destroy: () => void }>();
  front.on('session', (session) => sessions.add(session));
  return {
    url: `https://localhost:${(front.address() as AddressInfo).port}`,
    end: () => {
      for (const session of sessions) session.destroy();
      return new Promise((resolve) => front.close(() => resolve()));
    },
  };
}

function makeIdentity(): { key: Buffer; cert: Buffer } | null {
  const folder = mkdtempSync(join(tmpdir(), 'linekeeper-identity-'));
  const [key, cert] = [join(folder, 'key'), join(folder, 'cert')];
  const one = ['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes', '-days', '2'];
  try {
    execFileSync('openssl', [...one, '-subj', '/CN=localhost', '-keyout', key, '-out', cert], { stdio: 'ignore' });
    return { key: readFileSync(key), cert: readFileSync(cert) };
  } catch {
    return null;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
