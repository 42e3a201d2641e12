import type { Page } from 'playwright-core';

/** A room terminal, lying and standing. */
export const LANDSCAPE = { width: 1280, height: 800 };
export const PORTRAIT = { width: 800, height: 1280 };

/** Buttons and fields that are smaller than `least` either way, one line each. */
export async function smallTargets(page: Page, least: number): Promise<string[]> {
  return page.evaluate((size) => {
    const found: string[] = [];
    const walk = (root: Document | ShadowRoot) => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) {
          walk(element.shadowRoot);
        }
        if (element.matches('button, input, select, textarea, a[href], summary')) {
          const box = element.getBoundingClientRect();
          const hidden = box.width === 0 || box.height === 0;
          if (!hidden && (box.width < size - 0.5 || box.height < size - 0.5)) {
            found.push(`${element.textContent?.trim().slice(0, 30)} ${box.width}x${box.height}`);
          }
        }
      }
    };
    walk(document);
    return found;
  }, least);
}

/** True if the page itself would have to be scrolled. */
export async function scrolls(page: Page): Promise<boolean> {
  return page.evaluate(() => {
    const root = document.scrollingElement!;
    return root.scrollHeight > innerHeight + 1 || root.scrollWidth > innerWidth + 1;
  });
}

/** Words that break off or reach out of their place sideways, one line each. */
export async function cutWords(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const walk = (root: Document | ShadowRoot) => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) walk(element.shadowRoot);
        // What is drawn is as wide as it is: no box of its own cuts it.
        if (element instanceof SVGElement) continue;
        const box = element as HTMLElement;
        const { overflowX, display } = getComputedStyle(box);
        const scrolls = overflowX === 'auto' || overflowX === 'scroll';
        const text = [...box.childNodes].some((n) => n instanceof Text && n.data.trim() !== '');
        if (!text || scrolls || display === 'inline' || box.closest('.vh, select')) continue;
        if (box.clientWidth > 0 && box.scrollWidth > box.clientWidth + 1) {
          found.push(`${box.textContent!.trim().replace(/\s+/g, ' ').slice(0, 60)}`);
        }
      }
    };
    walk(document);
    return found;
  });
}

/** What is cut off or would have to be scrolled inside the page, by class. */
export async function overflowing(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const found: string[] = [];
    const walk = (root: Document | ShadowRoot) => {
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) {
          walk(element.shadowRoot);
        }
        const box = element as HTMLElement;
        const over = getComputedStyle(box);
        const clipped = over.overflowY !== 'visible' && box.scrollHeight > box.clientHeight + 1;
        if (clipped && box.clientHeight > 60 && !box.classList.contains('vh')) {
          found.push(`${box.className} ${box.scrollHeight} in ${box.clientHeight}`);
        }
      }
    };
    walk(document);
    return found;
  });
}
