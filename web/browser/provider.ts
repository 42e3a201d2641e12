import { chmod, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { createServer, type RequestListener } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Provider } from 'oidc-provider';

const CLIENT = 'sunup-board';
const SECRET = 'what-the-board-proves-itself-with-there';

/** A real identity provider on this machine, which knows whoever types a name, and the board. */
export interface IdentityProvider {
  /** The site's file that names it. */
  readonly file: string;
  /** The board's address, to which people may come back. */
  know(board: string): void;
  stop(): Promise<void>;
}

export async function identityProvider(): Promise<IdentityProvider> {
  let answer: RequestListener = (_request, response) => response.writeHead(503).end();
  const server = createServer((request, response) => answer(request, response));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const issuer = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const folder = await mkdtemp(join(tmpdir(), 'sunup-provider-'));
  const file = join(folder, 'sign-in.json');
  const secret = join(folder, 'secret');
  await writeFile(secret, SECRET);
  await chmod(secret, 0o600);
  await writeFile(
    file,
    JSON.stringify({ issuer, client: CLIENT, secret: 'secret', ownScreens: true }),
  );
  return {
    file,
    know: (board) => {
      answer = new Provider(issuer, {
        clients: [
          {
            client_id: CLIENT,
            client_secret: SECRET,
            redirect_uris: [`${board}/signed-in`],
            grant_types: ['authorization_code'],
            response_types: ['code'],
          },
        ],
        pkce: { required: () => true },
        findAccount: (_ctx: unknown, id: string) => ({
          accountId: id,
          claims: () => ({ sub: id }),
        }),
      }).callback();
    },
    stop: async () => {
      server.closeAllConnections();
      if (server.listening) await new Promise((resolve) => server.close(resolve));
      await rm(folder, { recursive: true, force: true });
    },
  };
}
