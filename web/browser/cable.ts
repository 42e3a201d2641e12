import { once } from 'node:events';
import { createServer, connect, type AddressInfo, type Server, type Socket } from 'node:net';

/** The wire between one screen and the board, which a test can cut and mend. Loopback only. */
export class Cable {
  private readonly sockets = new Set<Socket>();
  private whole = true;
  private readonly server: Server;

  private constructor(port: number) {
    this.server = createServer((near) => {
      if (!this.whole) {
        near.destroy();
        return;
      }
      const far = connect(port, '127.0.0.1');
      for (const [one, other] of [
        [near, far],
        [far, near],
      ] as const) {
        this.sockets.add(one);
        one.pipe(other);
        one.on('error', () => other.destroy());
        one.on('close', () => {
          this.sockets.delete(one);
          other.destroy();
        });
      }
    });
  }

  /** @param address of the board, for example `http://127.0.0.1:8080` */
  static async to(address: string): Promise<Cable> {
    const cable = new Cable(Number(new URL(address).port));
    cable.server.listen(0, '127.0.0.1');
    await once(cable.server, 'listening');
    return cable;
  }

  /** Where a screen finds the board at the end of this cable. */
  get address(): string {
    return `http://127.0.0.1:${(this.server.address() as AddressInfo).port}`;
  }

  cut(): void {
    this.whole = false;
    for (const socket of this.sockets) socket.destroy();
  }

  mend(): void {
    this.whole = true;
  }

  close(): void {
    this.cut();
    this.server.close();
  }
}
