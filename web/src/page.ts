// The page's own hands: light, keys, the scriber's drag, and what is shown when the program is gone.
// Everything that is worked out comes from the program; nothing here computes a figure.

interface DotNetRef {
  invokeMethodAsync(name: string, ...args: unknown[]): Promise<unknown>;
}

interface Handler {
  onConnectionDown(options: unknown, error?: Error): void;
  onConnectionUp(): void;
}

declare const Blazor: {
  start(options: { circuit: { reconnectionHandler: Handler } }): Promise<void>;
  reconnect(): Promise<boolean>;
};

const html = document.documentElement;

function keep(name: string, value: string): void {
  try {
    localStorage.setItem(`throwright-${name}`, value);
  } catch {
    // Not remembered; it still holds for this window.
  }
}

function kept(name: string): string | null {
  try {
    return localStorage.getItem(`throwright-${name}`);
  } catch {
    return null;
  }
}

function lightNow(): string {
  return html.dataset.light ?? (matchMedia('(prefers-color-scheme: dark)').matches ? 'lamp' : 'day');
}

function showLight(): void {
  for (const button of document.querySelectorAll<HTMLElement>('button[data-light]'))
    button.setAttribute('aria-pressed', String(button.dataset.light === lightNow()));
}


const throwright = {
  /** What the last visit chose, and from now on how wide the window is. */
  async remembered(viewer: DotNetRef): Promise<string | null> {
    const tell = () => viewer.invokeMethodAsync('Wide', html.clientWidth).catch(() => undefined);
    let later: ReturnType<typeof setTimeout> | undefined;
    addEventListener('resize', () => {
      clearTimeout(later);
      later = setTimeout(() => void tell(), 150);
    });
    // Heard before anything goes on: the page is dressed when it is drawn for this window, not for the usual one.
    await tell();
    return kept('units');
  },
  remember(units: string): void {
    keep('units', units);
  },
  focus(id: string): void {
    document.getElementById(id)?.focus({ preventScroll: true });
  },
  dressed(): void {
    showLight();
    html.dataset.ready = 'true';
  },
};

Object.assign(globalThis, { throwright });

document.addEventListener('click', (event) => {
  const target = event.target instanceof Element ? event.target.closest<HTMLElement>('button[data-light], [data-do]') : null;
  if (!target) return;
  if (target.dataset.do === 'print') {
    print();
  } else if (target.dataset.light) {
    html.dataset.light = target.dataset.light;
    keep('light', target.dataset.light);
    showLight();
  }
});
matchMedia('(prefers-color-scheme: dark)').addEventListener('change', showLight);

// A way past the top: it moves the focus, not only the picture.
document.addEventListener('click', (event) => {
  const link = event.target instanceof Element ? event.target.closest<HTMLAnchorElement>('a.skip') : null;
  const to = link && document.getElementById(link.hash.slice(1));
  if (!to) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  if (!to.hasAttribute('tabindex')) to.tabIndex = -1;
  to.focus();
}, { capture: true });

// The scriber: drag anywhere over the ladder; the slider below it has the same value for the keyboard.
function scribe(event: PointerEvent): void {
  const box = document.getElementById('scribed');
  const slider = document.getElementById('scriber');
  const line = box?.querySelector('svg.scriber path.line');
  if (!(box && slider instanceof HTMLInputElement && line instanceof SVGPathElement)) return;
  const zero = Number(box.dataset.zero), scale = Number(box.dataset.scale);
  const toDrawing = line.getScreenCTM()?.inverse();
  if (!toDrawing || !(scale > 0)) return;
  const at = (new DOMPoint(event.clientX, event.clientY).matrixTransform(toDrawing).x - zero) / scale;
  const value = String(Math.round(Math.min(Math.max(at * 1e4, Number(slider.min)), Number(slider.max))));
  if (value === slider.value) return;
  slider.value = value;
  // One event a frame; the program takes them in order and is faster than the hand.
  wanted ??= requestAnimationFrame(() => {
    wanted = undefined;
    slider.dispatchEvent(new Event('input', { bubbles: true }));
  });
}

let wanted: number | undefined;
let dragging = false;
document.addEventListener('pointerdown', (event) => {
  if (event.target instanceof Element && event.target.closest('#scribed') && event.button === 0) {
    dragging = true;
    scribe(event);
  }
});
document.addEventListener('pointermove', (event) => {
  if (dragging) scribe(event);
});
for (const end of ['pointerup', 'pointercancel'] as const) document.addEventListener(end, () => (dragging = false));

// A map that is walked with the arrow keys: the page stays where it is.
document.addEventListener('keydown', (event) => {
  if (event.target instanceof Element && event.target.matches('[data-arrows]') && /^(Arrow|Enter)/.test(event.key)) event.preventDefault();
});

// Single keys, only where nothing is typed; `?` shows them. Alt+K switches them off and on (WCAG 2.1.4).
let keys = kept('keys') !== 'off';
document.addEventListener('keydown', (event) => {
  const into = event.target instanceof Element ? event.target : null;
  const typing = into?.matches('input:not([type=range]):not([type=checkbox]), textarea, select') ?? false;
  if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'z' && !typing) {
    event.preventDefault();
    document.getElementById(event.shiftKey ? 'redo' : 'undo')?.click();
    return;
  }
  if (event.altKey && event.key.toLowerCase() === 'k') {
    keys = !keys;
    keep('keys', keys ? 'on' : 'off');
    return;
  }
  if (typing || !keys || event.ctrlKey || event.metaKey || event.altKey) return;
  const press = (selector: string) => document.querySelector<HTMLElement>(selector)?.click();
  const main = document.getElementById('main');
  switch (event.key) {
    case '[':
    case ']': {
      const to = event.key === '[' ? main?.dataset.previous : main?.dataset.next;
      if (to) location.assign(to);
      break;
    }
    case '1': case '2': case '3': case '4': case '5': case '6':
      document.querySelectorAll<HTMLElement>('.chain .tabs a')[Number(event.key) - 1]?.click();
      break;
    case 'f':
      nextFinding();
      break;
    case 't':
      press('button[data-key="t"]');
      break;
    case 'k':
      press('button[data-key="k"]');
      break;
    case 'u':
      press('.switch [aria-pressed="false"]');
      break;
    case 'l':
      press(`button[data-light="${lightNow() === 'day' ? 'lamp' : 'day'}"]`);
      break;
    case '?':
      showKeys();
      break;
    default:
      return;
  }
});

function nextFinding(): void {
  const all = [...document.querySelectorAll<HTMLElement>('.finding')];
  const next = all[(all.findIndex((f) => f.contains(document.activeElement)) + 1) % Math.max(1, all.length)];
  if (!next) return;
  next.tabIndex = -1;
  next.focus();
}

function showKeys(): void {
  document.querySelector('dialog.keys')?.remove();
  const rows: [string, string][] = [
    ['[ ]', 'previous, next run'], ['1 to 6', 'part of the chain'], ['F', 'next finding'], ['T', 'try the first remedy'], ['K', 'keep it'],
    ['U', 'inches or millimetres'], ['L', 'day or lamp'], ['Ctrl Z', 'undo; with Shift, redo'], ['↑ ↓', 'in a field: a sixteenth, half a millimetre, a degree; with Shift finer'],
    ['Enter, Esc', 'in a field: keep what is typed, drop it'], ['Alt K', `single keys ${keys ? 'off' : 'on'}`], ['?', 'this table'],
  ];
  const dialog = document.createElement('dialog');
  dialog.className = 'keys';
  dialog.setAttribute('aria-label', 'Keys');
  const list = document.createElement('dl');
  for (const [key, does] of rows) {
    const dt = document.createElement('dt');
    dt.append(Object.assign(document.createElement('kbd'), { textContent: key }));
    list.append(dt, Object.assign(document.createElement('dd'), { textContent: does }));
  }
  const close = Object.assign(document.createElement('button'), { type: 'button', textContent: 'Close', className: 'out' });
  close.addEventListener('click', () => dialog.close());
  dialog.append(Object.assign(document.createElement('h2'), { textContent: 'Keys' }), list, close);
  dialog.addEventListener('close', () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
}

// A link to a field: the field may only come with the next drawing of the page.
function toField(): void {
  const id = decodeURIComponent(location.hash.slice(1));
  if (!id.startsWith('f-')) return;
  let tries = 0;
  const look = () => {
    const field = document.getElementById(id);
    if (field) field.focus();
    else if (tries++ < 40) setTimeout(look, 50);
  };
  look();
}
addEventListener('hashchange', toField);
document.addEventListener('click', (event) => {
  if (event.target instanceof Element && event.target.closest('a[href*="#f-"]')) setTimeout(toField, 60);
});

// The program is gone: say so, lock the inputs, and come back by itself as soon as it is there again.
const bar = document.getElementById('stopped');

async function wait(): Promise<void> {
  for (;;) {
    await new Promise((done) => setTimeout(done, 700));
    try {
      const answer = await fetch('/alive', { cache: 'no-store' });
      if (!answer.ok) continue;
    } catch {
      continue;
    }
    try {
      if (await Blazor.reconnect()) return;
    } catch {
      // A new program does not know this window any more.
    }
    location.reload();
    return;
  }
}

let waiting = false;
const handler: Handler = {
  onConnectionDown() {
    if (waiting) return;
    waiting = true;
    const saved = document.getElementById('saved')?.dataset.saved;
    if (bar) {
      bar.textContent = `Throwright stopped. ${saved ? `Your last change was saved at ${saved}. ` : ''}The page comes back by itself when it runs again: throwright serve`;
      bar.hidden = false;
    }
    for (const part of document.querySelectorAll('main, header')) part.setAttribute('inert', '');
    void wait();
  },
  onConnectionUp() {
    waiting = false;
    if (bar) bar.hidden = true;
    for (const part of document.querySelectorAll('main, header')) part.removeAttribute('inert');
  },
};

void Blazor.start({ circuit: { reconnectionHandler: handler } }).then(toField);
