import type { Server } from 'node:http';
import axe from 'axe-core';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { findChromium } from '../package/chromium.js';
import { buildPage, serve } from './build-page.js';

/** A page, and what went wrong on it. */
export interface OpenedPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors of the console and of scripts, and requests to other hosts. */
  readonly faults: readonly string[];
}

/** How a page is looked at. */
export interface Look {
  readonly width?: number;
  readonly scheme?: 'light' | 'dark';
}

/** A site that is served, and a browser to open it. */
export interface ServedSite {
  readonly url: string;
  readonly open: (query: string, look?: Look) => Promise<OpenedPage>;
  readonly close: () => Promise<void>;
}

/** Opens an address in a fresh profile. */
async function openIn(
  browser: Browser,
  url: string,
  { width = 1280, scheme = 'light' }: Look,
): Promise<OpenedPage> {
  const context = await browser.newContext({
    viewport: { width, height: 900 },
    colorScheme: scheme,
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  page.on('pageerror', ({ message }) => faults.push(message));
  page.on('request', (request) => {
    const { origin, protocol } = new URL(request.url());
    const isOwn = origin === new URL(url).origin || ['data:', 'blob:'].includes(protocol);
    if (!isOwn) faults.push(`asked for ${request.url()}`);
  });
  await page.goto(url);
  return { page, context, faults };
}

/** Builds the page of the elements, serves it, and starts a browser. */
export async function serveElements(): Promise<ServedSite> {
  const { command, reason } = findChromium();
  if (command === undefined) throw new Error(reason);
  const { url, server }: { url: string; server: Server } = await serve(await buildPage());
  const browser = await chromium.launch({ executablePath: command, args: ['--no-sandbox'] });
  return {
    url,
    open: (query, look = {}) => openIn(browser, url + query, look),
    close: async () => {
      await browser.close();
      server.close();
    },
  };
}

/** Words in which no-break spaces count as spaces. */
export const plain = (text: string | null): string => (text ?? '').replaceAll('\u00a0', ' ');

/** What axe finds that is serious or worse. */
export async function seriousFindings(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    const run = (window as unknown as { axe: { run: () => Promise<axe.AxeResults> } }).axe.run;
    return (await run()).violations;
  });
  return found
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
}

/** How many pixels the page is wider than the window. */
export const overflow = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
