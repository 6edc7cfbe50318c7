import './jitless.ts';
import type { PlayerReply, PlayerTask, Request } from '../shared/messages.ts';
import { Director } from './director.ts';
import { startPlayer } from './player.ts';
import { PlayerPool } from './player-pool.ts';
import type { Port } from './port.ts';
import type { WorkerStart } from './worker-start.ts';

/** The first message says what this worker is for. */
self.onmessage = ({ data }: MessageEvent<WorkerStart>) => {
  if (data.kind === 'play') {
    self.onmessage = null;
    startPlayer(asPort<PlayerReply, PlayerTask>(data.director));
    return;
  }
  const director = new Director(
    data.base,
    new PlayerPool(data.players.map(asPort<PlayerTask, PlayerReply>)),
    (reply) => self.postMessage(reply),
  );
  self.onmessage = (event: MessageEvent<Request>) => void director.ask(event.data);
};

/** A port of the browser knows nothing of what is sent through it. */
function asPort<Sent, Received>(port: MessagePort): Port<Sent, Received> {
  return port as unknown as Port<Sent, Received>;
}
