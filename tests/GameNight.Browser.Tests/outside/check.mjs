// Reads pages from standard input, writes findings to standard output, both as JSON.
// {chromium, cookies: [{name, value, domain, path}], pages: [{name, url, isSignedIn, html, width, isLive}]} -> [{name, checker, code, message, where}]
import { readFileSync } from 'node:fs';
import { text } from 'node:stream/consumers';
import { HtmlValidate } from 'html-validate';
import pa11y from 'pa11y';
import puppeteer from 'puppeteer';

const { chromium, cookies, pages } = JSON.parse(await text(process.stdin));
const rules = JSON.parse(readFileSync(new URL('html-validate.json', import.meta.url), 'utf8'));
const validator = new HtmlValidate(rules);
const findings = [];
const launch = { executablePath: chromium, args: ['--no-sandbox', '--disable-gpu'] };

// Cookies lie in the browser: a header would not reach the live connection.
const [signedIn, stranger] = [await puppeteer.launch(launch), await puppeteer.launch(launch)];
await signedIn.setCookie(...cookies);

for (const page of pages) {
  const report = await validator.validateString(page.html, `${page.name}.html`);
  for (const message of report.results.flatMap(result => result.messages)) {
    findings.push({
      name: page.name, checker: 'html-validate', code: message.ruleId, message: message.message,
      where: `${message.line}:${message.column} ${page.html.split('\n')[message.line - 1]?.trim().slice(Math.max(0, message.column - 40), message.column + 80) ?? ''}`,
    });
  }

  const browser = page.isSignedIn ? signedIn : stranger;
  const tab = await browser.newPage();
  const result = await pa11y(page.url, {
    standard: 'WCAG2AA',
    runners: ['axe', 'htmlcs'],
    browser,
    page: tab,
    viewport: { width: page.width, height: 844 },
    timeout: 60000,
    actions: page.isLive ? ['wait for element main[data-circuit=up] h1 to be visible'] : [],
    wait: page.isLive ? 1500 : 0,
  });
  await tab.close();
  for (const issue of result.issues) {
    findings.push({ name: page.name, checker: issue.runner, code: issue.code, message: issue.message, where: `${issue.selector} ${issue.context ?? ''}` });
  }
}

await Promise.all([signedIn.close(), stranger.close()]);
process.stdout.write(JSON.stringify(findings));
