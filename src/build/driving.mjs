// What a person does with the workbench in a browser, and waits for.

/** The workbench opens something that asks for words (`key`), is told these, and takes the first that has them. */
export async function pick(page, key, words) {
    await page.keyboard.press(key);
    await page.waitForSelector('.quick-input-widget input', { state: 'visible' });
    await page.keyboard.type(words);
    await page.waitForSelector(`.quick-input-list .monaco-list-row:has-text("${words}")`);
    await page.waitForTimeout(500);
    await page.keyboard.press('Enter');
}

/** Waits until something is so; throws after a minute, with what is there instead. */
export async function until(page, what, isSo, state) {
    for (let time = 0; time < 600; time++) {
        if (await isSo()) return;
        await page.waitForTimeout(100);
    }
    throw new Error(`not seen: ${what}; there is ${JSON.stringify(await state())}`);
}
