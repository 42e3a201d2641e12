// ops/bench wire: a bare loop on Node's most used socket library. What comes in goes to everybody.
import { createRequire } from 'node:module';
const { WebSocketServer } = createRequire(process.argv[2] + '/')('ws');

const server = new WebSocketServer({ host: '127.0.0.1', port: 0, perMessageDeflate: false });
server.on('listening', () => console.log(`port ${server.address().port}`));
server.on('connection', (socket) => {
  socket.on('error', () => {});
  socket.on('message', (data) => {
    for (const one of server.clients) if (one.readyState === 1) one.send(data, { binary: true });
  });
});
