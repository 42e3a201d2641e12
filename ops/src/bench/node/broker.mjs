// ops/bench wire: an MQTT broker over WebSockets. A packet goes out as one message.
import { createRequire } from 'node:module';
import { Duplex } from 'node:stream';
const require = createRequire(process.argv[2] + '/');
const { WebSocketServer } = require('ws');
const broker = require('aedes')();

const server = new WebSocketServer({ host: '127.0.0.1', port: 0, perMessageDeflate: false });
server.on('listening', () => console.log(`port ${server.address().port}`));
server.on('connection', (socket) => {
  const stream = new Duplex({
    read() {},
    write: (chunk, encoding, done) => socket.send(chunk, done),
    writev: (chunks, done) => socket.send(Buffer.concat(chunks.map((c) => c.chunk)), done),
  });
  socket.on('message', (data) => stream.push(data));
  socket.on('close', () => stream.destroy());
  socket.on('error', () => {});
  stream.on('error', () => {});
  broker.handle(stream);
});
