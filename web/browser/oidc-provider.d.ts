/** What the tests use of the provider, which comes without types. */
declare module 'oidc-provider' {
  import type { RequestListener } from 'node:http';

  export class Provider {
    constructor(issuer: string, options: Record<string, unknown>);
    callback(): RequestListener;
  }
}
