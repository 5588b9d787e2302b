import { once } from 'node:events';
import { type AddressInfo, connect, createServer, type Socket } from 'node:net';

/** A line to a server on which all takes its time. */
export interface SlowLine {
  url: string;
  /** How often somebody asked and waited for an answer since this was last read. */
  roundTrips(): number;
  /** Nobody gets through, or everybody again. */
  cut(isCut: boolean): void;
  /** What is asked next, with this in it, gets there, and whoever asked hears nothing but that the line broke. */
  loseAnswerTo(text: string): void;
  close(): void;
}

const later = (delayMs: number, work: () => void) => (delayMs === 0 ? work() : setTimeout(work, delayMs));

/** Passes on all that is said to the server at `to`, each way half of `delayMs` later. */
export const slowLine = async (to: string, delayMs = 0): Promise<SlowLine> => {
  const { hostname, port } = new URL(to);
  const sockets = new Set<Socket>();
  let [turns, isCut] = [0, false];
  let lost: string | null = null;
  const server = createServer((near) => {
    if (isCut) return near.destroy();
    const far = connect(Number(port), hostname);
    let [isAsking, isLost] = [false, false];
    near.on('data', (bytes) => {
      if (!isAsking) turns += 1;
      isAsking = true;
      if (lost !== null && bytes.includes(lost)) [isLost, lost] = [true, null];
      later(delayMs / 2, () => far.write(bytes));
    });
    far.on('data', (bytes) => {
      if (isLost) return near.destroy();
      isAsking = false;
      later(delayMs / 2, () => near.write(bytes));
      return undefined;
    });
    for (const socket of [near, far]) {
      sockets.add(socket);
      socket.on('error', () => undefined);
      socket.on('close', () => {
        sockets.delete(socket);
        near.destroy();
        far.destroy();
      });
    }
    return undefined;
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const endAll = () => {
    for (const socket of sockets) socket.destroy();
  };
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    roundTrips: () => {
      const before = turns;
      turns = 0;
      return before;
    },
    cut: (now) => {
      isCut = now;
      if (now) endAll();
    },
    loseAnswerTo: (text) => {
      lost = text;
    },
    close: () => {
      server.close();
      endAll();
    },
  };
};
