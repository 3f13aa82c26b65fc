// open.js FOLDER FILE... - opens each file in a headless browser and says what is wrong.
//
// The browser is spoken to over a pipe, in JSON messages that end in a zero byte.  For
// each file FOLDER gets a picture of it on a phone and on a screen, and a PDF on letter
// and on A4.
'use strict';

const { spawn } = require('child_process');
const fs = require('fs');
const os = require('os');
const path = require('path');
const { pathToFileURL } = require('url');

const PHONE = { width: 390, height: 844 };
const SCREEN = { width: 1000, height: 1300 };
const PAPERS = { letter: [8.5, 11], a4: [8.27, 11.69] };

class Browser {
	constructor(profile) {
		this.process = spawn('chromium', [
			'--headless', '--no-sandbox', '--disable-gpu', '--disable-quic',
			'--no-first-run', '--disable-background-networking',
			'--disable-component-update', '--disable-sync',
			'--user-data-dir=' + profile, '--remote-debugging-pipe',
		], { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] });
		this.gone = new Promise((resolve) => this.process.on('exit', resolve));
		this.calls = new Map();
		this.listeners = [];
		this.last = 0;
		let rest = Buffer.alloc(0);
		this.process.stdio[4].on('data', (bytes) => {
			rest = Buffer.concat([rest, bytes]);
			for (let end; (end = rest.indexOf(0)) >= 0; rest = rest.subarray(end + 1))
				this.take(JSON.parse(rest.subarray(0, end).toString()));
		});
	}

	take(message) {
		const call = this.calls.get(message.id);
		if (!call) {
			this.listeners.forEach((listener) => listener(message));
			return;
		}
		this.calls.delete(message.id);
		if (message.error)
			call.reject(new Error(message.error.message));
		else
			call.resolve(message.result);
	}

	send(method, params = {}, page) {
		const id = ++this.last;
		this.process.stdio[3].write(
			JSON.stringify({ id, method, params, sessionId: page }) + '\0');
		return new Promise((resolve, reject) => this.calls.set(id, { resolve, reject }));
	}

	once(method, page) {
		return new Promise((resolve) => {
			const listener = (message) => {
				if (message.method !== method || message.sessionId !== page)
					return;
				this.listeners = this.listeners.filter((l) => l !== listener);
				resolve(message.params);
			};
			this.listeners.push(listener);
		});
	}

	async close() {
		this.send('Browser.close').catch(() => {});
		await this.gone;
	}
}

// Runs inside the page: what is wider than it, and which words of a picture overlap.
function look() {
	const found = [];
	const root = document.documentElement;
	const alone = root.tagName === 'svg';
	if (!alone && root.scrollWidth > root.clientWidth)
		found.push(`${root.scrollWidth} pixels wide on a screen of ${root.clientWidth}`);
	for (const picture of document.querySelectorAll('svg')) {
		const box = picture.viewBox.baseVal;
		const words = [...picture.querySelectorAll('text')].map((text) => {
			const { x, y, width, height } = text.getBBox();
			return { text: text.textContent, left: x, top: y, right: x + width,
				bottom: y + height };
		});
		words.forEach((a, i) => {
			if (a.left < 0 || a.top < 0 || a.right > box.width || a.bottom > box.height)
				found.push(`"${a.text}" reaches out of its picture`);
			for (const b of words.slice(i + 1))
				if (a.left < b.right && b.left < a.right && a.top + 1 < b.bottom &&
				    b.top + 1 < a.bottom)
					found.push(`"${a.text}" and "${b.text}" overlap`);
		});
	}
	if (!alone && document.querySelectorAll('h1').length !== 1)
		found.push('not one heading of the first rank');
	return found;
}

async function open(browser, folder, file) {
	const { targetId } = await browser.send('Target.createTarget', { url: 'about:blank' });
	const { sessionId: page } = await browser.send('Target.attachToTarget',
		{ targetId, flatten: true });
	const send = (method, params) => browser.send(method, params, page);
	const name = path.basename(file, '.html');
	const url = pathToFileURL(path.resolve(file)).href;
	const found = [];
	const listener = (message) => {
		if (message.sessionId !== page)
			return;
		const p = message.params;
		if (message.method === 'Log.entryAdded')
			found.push('console: ' + p.entry.text);
		if (message.method === 'Runtime.consoleAPICalled')
			found.push('console: ' + JSON.stringify(p.args));
		if (message.method === 'Runtime.exceptionThrown')
			found.push('exception: ' + p.exceptionDetails.text);
		if (message.method === 'Network.requestWillBeSent' && p.request.url !== url)
			found.push('request: ' + p.request.url);
	};
	browser.listeners.push(listener);
	for (const domain of ['Page', 'Log', 'Runtime', 'Network'])
		await send(domain + '.enable');
	for (const [where, size] of Object.entries({ phone: PHONE, screen: SCREEN })) {
		await send('Emulation.setDeviceMetricsOverride',
			{ ...size, deviceScaleFactor: 1, mobile: where === 'phone' });
		const loaded = browser.once('Page.loadEventFired', page);
		await send('Page.navigate', { url });
		await loaded;
		const { result } = await send('Runtime.evaluate',
			{ expression: `(${look})()`, returnByValue: true });
		found.push(...result.value.map((words) => `${where}: ${words}`));
		const shot = await send('Page.captureScreenshot', { format: 'png' });
		fs.writeFileSync(path.join(folder, `${name}-${where}.png`),
			Buffer.from(shot.data, 'base64'));
	}
	await send('Emulation.clearDeviceMetricsOverride');
	for (const [paper, [paperWidth, paperHeight]] of Object.entries(PAPERS)) {
		const { data } = await send('Page.printToPDF',
			{ paperWidth, paperHeight, preferCSSPageSize: false });
		fs.writeFileSync(path.join(folder, `${name}-${paper}.pdf`),
			Buffer.from(data, 'base64'));
	}
	browser.listeners = browser.listeners.filter((l) => l !== listener);
	await browser.send('Target.closeTarget', { targetId });
	return found.map((words) => `${name}: ${words}`);
}

async function main([folder, ...files]) {
	const profile = fs.mkdtempSync(path.join(os.tmpdir(), 'browser-'));
	const browser = new Browser(profile);
	let faults = 0;
	try {
		for (const file of files)
			for (const words of await open(browser, folder, file)) {
				console.log(words);
				faults++;
			}
	} finally {
		await browser.close();
		fs.rmSync(profile, { recursive: true, force: true });
	}
	return faults ? 1 : 0;
}

main(process.argv.slice(2)).then((status) => process.exit(status), (error) => {
	console.log(String(error));
	process.exit(1);
});
