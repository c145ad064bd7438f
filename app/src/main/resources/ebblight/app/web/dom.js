// A few lines instead of a framework.

/** An element from a selector-like name, attributes and children; texts are texts, never markup. */
export function el(name, attributes = {}, ...children) {
  const [tag, ...classes] = name.split('.');
  const node = document.createElement(tag || 'div');
  if (classes.length) {
    node.className = classes.join(' ');
  }
  for (const [key, value] of Object.entries(attributes)) {
    if (key.startsWith('on')) {
      node.addEventListener(key.slice(2), value);
    } else if (key === 'html') {
      node.innerHTML = value;
    } else if (value === true) {
      node.setAttribute(key, '');
    } else if (value !== false && value !== null && value !== undefined) {
      node.setAttribute(key, value);
    }
  }
  node.append(...children.flat(4).filter((c) => c !== null && c !== undefined && c !== false && c !== ''));
  return node;
}

export const key = (label, act, attributes = {}) => el('button', { type: 'button', onclick: act, ...attributes }, label);

/** Puts children in place of what a host holds and gives the focus back to the element with the same data-focus. */
export function fill(host, ...children) {
  const focused = host.contains(document.activeElement) ? document.activeElement.dataset.focus : null;
  host.replaceChildren(...children.flat(4).filter((c) => c !== null && c !== undefined && c !== false && c !== ''));
  if (focused) {
    host.querySelector(`[data-focus="${CSS.escape(focused)}"]`)?.focus({ preventScroll: true });
  }
}

/** After a finger was lifted its click comes by way of the browser, later when the page is at work. */
const CLICK_MILLIS = 500;

/**
 * { soon, end }: soon draws at once, or when a finger lies on the host after it was lifted. A key that is put in place of
 * another one in the middle of a touch never gets its click.
 */
export function betweenTouches(host, draw) {
  const listening = new AbortController();
  const { signal } = listening;
  let held = false;
  let waiting = false;
  let timer = 0;
  const lifted = () => {
    held = false;
    if (waiting) {
      waiting = false;
      draw();
    }
  };
  host.addEventListener('pointerdown', () => { clearTimeout(timer); held = true; }, { capture: true, signal });
  const after = (millis) => () => {
    clearTimeout(timer);
    timer = setTimeout(lifted, millis);
  };
  addEventListener('pointerup', after(CLICK_MILLIS), { signal });
  addEventListener('pointercancel', after(0), { signal });
  addEventListener('click', after(0), { signal });
  return {
    soon() {
      waiting = held;
      if (!held) {
        draw();
      }
    },
    end() {
      clearTimeout(timer);
      listening.abort();
    },
  };
}

export const marks = (svg) => el('span.marks', { html: svg, 'aria-hidden': 'true' });

/** Calls act once, then again and again while the key is held: by pointer, or by the keyboard's own repeat. */
export function runWhileHeld(button, act) {
  let timer = 0;
  const stop = () => {
    clearTimeout(timer);
    timer = 0;
  };
  const run = (after) => {
    timer = setTimeout(() => {
      act();
      run(Math.max(50, after * 0.85));
    }, after);
  };
  button.addEventListener('pointerdown', (event) => {
    if (event.button === 0) {
      stop();
      act();
      run(420);
    }
  });
  for (const end of ['pointerup', 'pointerleave', 'pointercancel', 'blur']) {
    button.addEventListener(end, stop);
  }
  button.addEventListener('click', (event) => {
    if (event.detail === 0) {
      act();
    }
  });
}
