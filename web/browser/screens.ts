import type { Browser, Page } from 'playwright-core';
import { openBrowser } from './chromium.ts';

export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * Screens of one browser, each with storage of its own, used again by the next test. A new one is a
 * new process of the browser, which costs more of the processor than most tests do.
 */
export class Screens {
  private readonly free: Page[] = [];
  private readonly used: Page[] = [];
  private readonly browser: Browser;

  private constructor(browser: Browser) {
    this.browser = browser;
  }

  /** @param trusted as {@link openBrowser} takes them */
  static async begin(trusted: readonly string[] = []): Promise<Screens> {
    return new Screens(await openBrowser(trusted));
  }

  /**
   * A screen that shows nothing yet and knows nothing of earlier tests.
   *
   * @param patience milliseconds that waiting on it may take
   */
  async open(size: Size, patience: number): Promise<Page> {
    const page = this.free.pop() ?? (await (await this.browser.newContext()).newPage());
    this.used.push(page);
    page.setDefaultTimeout(patience);
    await page.setViewportSize(size);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    return page;
  }

  /** After each test: empties the screens, what they keep and what listened to them. */
  async clear(): Promise<void> {
    await Promise.all(this.used.map(forget));
    this.free.push(...this.used.splice(0));
  }

  close(): Promise<void> {
    return this.browser.close();
  }
}

async function forget(page: Page): Promise<void> {
  for (const event of ['pageerror', 'console'] as const) page.removeAllListeners(event);
  const { origin } = new URL(page.url());
  await page.evaluate(() => sessionStorage.clear()).catch(() => undefined);
  await page.goto('about:blank');
  if (origin === 'null') return;
  const devtools = await page.context().newCDPSession(page);
  await devtools.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
  await devtools.detach();
}
