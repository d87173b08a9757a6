// Uses the pages of a real class's gradebook as an instructor would, and prints what it found as one line of JSON.
// tests/browser/gradebook_pages.rs says what each must show.
//
//   node gradebook_pages.mjs MODULES ROOT TOKEN PICTURES
//
// MODULES: the folder with playwright-core and axe-core. ROOT: the server's address. TOKEN: the instructor's.
import { createRequire } from "node:module";
import { readFile } from "node:fs/promises";
import { join } from "node:path";

const [modules, root, token, pictures] = process.argv.slice(2);
const { chromium } = createRequire(import.meta.url)(join(modules, "playwright-core"));
const BROWSER = process.env.DETENT_CHROMIUM ?? "/usr/bin/chromium";
const axe = await readFile(join(modules, "axe-core/axe.min.js"), "utf8");
const browser = await chromium.launch({ executablePath: BROWSER, args: ["--no-sandbox"] });
const troubles = [];
/// Refusals that a test asks for are no troubles.
const ASKED_FOR = /status of (400|409)/;

async function newPage(size, options = {}) {
  // Only axe itself comes past the policy of the pages.
  const context = await browser.newContext({
    viewport: { width: size[0], height: size[1] }, reducedMotion: "reduce", ...options,
  });
  await context.addCookies([{ name: "detent-teacher", value: token, url: root }]);
  const page = await context.newPage();
  page.on("pageerror", (error) => troubles.push(String(error)));
  page.on("console", (message) => {
    if (message.type() === "error" && !ASKED_FOR.test(message.text())) troubles.push(message.text());
  });
  return page;
}

/// What breaks a rule of WCAG 2.2 A or AA, or a usage that axe recommends; what is wider than the window; small targets.
async function looked(page) {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const result = await globalThis.axe.run(document, {
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
      resultTypes: ["violations"],
    });
    const width = document.documentElement.clientWidth;
    const isScrolled = (element) => element.closest(".scroll") !== null;
    const wider = document.documentElement.scrollWidth > width
      ? [...document.querySelectorAll("body *")].filter((element) =>
        !isScrolled(element) && element.getBoundingClientRect().right > width + 1)
        .map((element) => `${element.tagName}.${element.className}`).concat(["the page itself"]).slice(0, 5)
      : [];
    return {
      passed: result.passes.length,
      violations: result.violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) =>
        `${node.html.slice(0, 160)} ${node.any[0]?.message ?? ""}`).slice(0, 3).join(" | ")}`),
      wider,
      broken_pictures: [...document.images].filter((image) => image.complete && image.naturalWidth === 0).length,
    };
  });
}

const found = { looks: {} };
const SIZES = [[1366, 768, "light"], [1024, 768, "light"], [390, 844, "light"], [1366, 768, "dark"]];
const PAGES = {
  "class": "", "job": "/jobs/1", "learner": "/learners/1", "report-teacher": "/learners/1/report/teacher",
  "report-parent": "/learners/1/report/parent",
};
for (const language of ["en", "es"]) {
  for (const [width, height, scheme] of SIZES) {
    const page = await newPage([width, height], { colorScheme: scheme });
    for (const [name, path] of Object.entries(PAGES)) {
      await page.goto(`${root}/teacher/gradebook${path}?lang=${language}`);
      for (const details of await page.locator("details").all()) await details.evaluate((element) => { element.open = true; });
      for (const image of await page.locator("img").all()) await image.scrollIntoViewIfNeeded();
      await page.waitForLoadState("networkidle");
      const look = `${name}-${width}-${scheme}-${language}`;
      found.looks[look] = await looked(page);
      await page.screenshot({ path: join(pictures, `${look}.png`), fullPage: true });
    }
    await page.context().close();
  }
  // As it comes out of a printer.
  const page = await newPage([794, 1123]);
  for (const reader of ["teacher", "parent"]) {
    await page.emulateMedia({ media: "print" });
    await page.goto(`${root}/teacher/gradebook/learners/1/report/${reader}?lang=${language}`);
    await page.screenshot({ path: join(pictures, `print-${reader}-${language}.png`), fullPage: true });
    found[`print_${reader}_${language}`] = await page.locator("nav, .on-screen").evaluateAll((elements) =>
      elements.filter((element) => element.getBoundingClientRect().height > 0).length);
  }
  await page.context().close();
}

// Two instructors at one mark.
{
  const [first, second] = [await newPage([1366, 768]), await newPage([1366, 768])];
  const form = (page) => page.locator("form.mark").first();
  for (const page of [first, second]) {
    await page.goto(`${root}/teacher/gradebook/learners/1?lang=en`);
    await page.locator("section:has(form.mark) > details").last().waitFor();
    await form(page).evaluate((element) => { element.closest("details").open = true; });
  }
  const save = async (page, values) => {
    for (const [name, value] of Object.entries(values)) await form(page).locator(`[name=${name}]`).fill(value);
    const before = await form(page).locator(".note").textContent();
    await form(page).locator("button").click();
    await page.waitForFunction((old) => {
      const note = document.querySelector("form.mark .note").textContent;
      return note && note !== old;
    }, before);
    return form(page).locator(".note").textContent();
  };
  found.notes = {
    wrong: await save(first, { points: "120", reason: "x" }),
    without_reason: await save(first, { points: "77,5", reason: "" }),
    saved: await save(first, { reason: "It rained in.", comment: "Well done." }),
    stale: await save(second, { points: "50", reason: "Too slow." }),
  };
  await second.reload();
  await form(second).evaluate((element) => { element.closest("details").open = true; });
  found.stands = await form(second).locator("[name=points]").inputValue();
  found.notes.after_loading = await save(second, { points: "60", reason: "Both agree." });

  // Erasing asks first, and by keys it is left again.
  await first.goto(`${root}/teacher/gradebook/learners/2?lang=es`);
  await first.locator("#erase").click();
  found.looks["erase-dialog-1366-light-es"] = await looked(first);
  await first.screenshot({ path: join(pictures, "erase-dialog-es.png") });
  await first.keyboard.press("Escape");
  found.left = await first.locator("#erase-dialog").evaluate((dialog) => dialog.open);
  await first.locator("#erase").click();
  await first.locator("[data-confirm]").click();
  await first.waitForURL("**/teacher/gradebook?lang=es");
  found.learners_left = await first.locator("section[aria-labelledby=learners-heading] tbody tr").count();
  for (const page of [first, second]) await page.context().close();
}

await browser.close();
console.log(JSON.stringify({ ...found, troubles }));
