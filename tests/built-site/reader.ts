import { existsSync } from 'node:fs';
import { join } from 'node:path';
import axe from 'axe-core';
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { expect } from 'vitest';
import { findChromium } from '../package/chromium.js';
import { serveSite, SITE } from './serve-site.js';

/** How a page is looked at. */
export interface Look {
  readonly width?: number;
  readonly scheme?: 'light' | 'dark';
}

/** A page in a fresh profile, and what went wrong on it. */
export interface OpenedPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors and warnings of the console, answers that are none, and requests to other addresses. */
  readonly complaints: readonly string[];
  /** Every address that was asked for, so far. */
  readonly asked: readonly string[];
}

/** A browser in front of the built site. */
export interface Reader {
  readonly address: string;
  readonly open: (path: string, look?: Look) => Promise<OpenedPage>;
  readonly close: () => Promise<void>;
}

/** Whether this machine has a browser. */
export const hasBrowser = findChromium().command !== undefined;

/** Serves the built site from a sub-path and starts a browser. */
export async function startReader(): Promise<Reader> {
  expect(existsSync(join(SITE, 'index.html')), 'site/ is missing: npm run docs').toBe(true);
  const { command, reason } = findChromium();
  if (command === undefined) throw new Error(reason);
  const site = await serveSite('/some/folder/');
  const browser = await chromium.launch({ executablePath: command, args: ['--no-sandbox'] });
  return {
    address: site.address,
    open: (path, look = {}) => openPage(browser, site.address, path, look),
    close: async () => {
      await browser.close();
      await site.close();
    },
  };
}

/**
 * Whether the script of the page has taken it over; the page of a wrong address has none. A long
 * page can still be busy with that when all its files are there, and until then the switch of
 * colours has no name.
 */
const IS_MOUNTED = "(app => app === null || '__vue_app__' in app)(document.querySelector('#app'))";

async function openPage(
  browser: Browser,
  address: string,
  path: string,
  { width = 1280, scheme = 'light' }: Look,
): Promise<OpenedPage> {
  const context = await browser.newContext({
    viewport: { width, height: 900 },
    colorScheme: scheme,
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  const asked: string[] = [];
  page.on('console', (message) => {
    const isFault = /^(?:error|warning)$/.test(message.type()) || /\bError\b/.test(message.text());
    if (isFault) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => {
    const url = request.url();
    asked.push(url);
    const isOwn = url.startsWith(address) || /^(?:data|blob):/.test(url);
    if (!isOwn) complaints.push(`asked for ${url}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()} ${response.url()}`);
  });
  await page.goto(address + path, { waitUntil: 'networkidle' });
  await page.waitForFunction(IS_MOUNTED);
  return { page, context, complaints, asked };
}

interface Violation {
  readonly id: string;
  readonly impact: string;
  readonly nodes: readonly { readonly html: string }[];
}

/** What axe calls serious or critical. */
export async function graveFindings(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate<{ violations: readonly Violation[] }>('axe.run()');
  const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
  return grave.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200) ?? ''}`);
}

/** How many pixels the page is wider than the window. */
export const overflow = (page: Page): Promise<number> =>
  page.evaluate('document.documentElement.scrollWidth - innerWidth');
