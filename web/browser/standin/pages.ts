import { createReadStream, existsSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';

const DIST = join(import.meta.dirname, '../../dist');
const KINDS: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
};

/** As the real server sends it: nothing inline, nothing from elsewhere. */
const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; " +
  "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** Serves the built pages under the board's addresses, on loopback. */
export async function servePages(): Promise<{ server: Server; address: string }> {
  const server = createServer((request, response) => {
    const path = normalize(new URL(request.url ?? '/', 'http://x').pathname);
    const page = /^\/(wall|desk|station|holding|pocket)(\/|$)/.exec(path)?.[1];
    const file = join(DIST, page ? `${page}.html` : path);
    if (!existsSync(file) || extname(file) === '') {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, {
      'content-type': KINDS[extname(file)] ?? 'application/octet-stream',
      'content-security-policy': POLICY,
    });
    createReadStream(file).pipe(response);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return { server, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}` };
}
