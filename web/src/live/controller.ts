import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { ChangeEvent } from './events.ts';
import type { Live } from './live.ts';

/** Draws a Lit element again when the picture or its state changes. */
export class LiveController implements ReactiveController {
  readonly live: Live;
  private readonly host: ReactiveControllerHost;
  private readonly wants: (keys: ReadonlySet<string>) => boolean;

  /** @param wants says whether a change of these keys concerns the element; all do by default */
  constructor(
    host: ReactiveControllerHost,
    live: Live,
    wants: (keys: ReadonlySet<string>) => boolean = () => true,
  ) {
    this.host = host;
    this.live = live;
    this.wants = wants;
    host.addController(this);
  }

  hostConnected(): void {
    this.live.addEventListener('change', this.onChange);
    this.live.addEventListener('state', this.onState);
  }

  hostDisconnected(): void {
    this.live.removeEventListener('change', this.onChange);
    this.live.removeEventListener('state', this.onState);
  }

  private readonly onChange = (event: Event): void => {
    if (this.wants((event as ChangeEvent).keys)) this.host.requestUpdate();
  };

  private readonly onState = (): void => this.host.requestUpdate();
}
