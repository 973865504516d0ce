'use strict';
// The page can be read without any of this; it adds the switches and the way
// from a finding to its place and back.
(function () {
  var bar = document.createElement('div');
  bar.className = 'bar';
  bar.setAttribute('role', 'status');
  document.body.appendChild(bar);

  var benches = Array.prototype.map.call(document.querySelectorAll('details.garment'), bench);
  var current = null; // the garment in which something was picked last

  function bench(root) {
    var b = { root: root, zoom: 1, picked: null };
    var form = root.querySelector('.switches');
    if (form) {
      form.addEventListener('submit', function (e) { e.preventDefault(); });
      form.addEventListener('change', function (e) { change(b, e.target); });
      form.addEventListener('click', function (e) {
        if (e.target.tagName === 'BUTTON') zoom(b, e.target.value);
      });
    }
    root.addEventListener('click', function (e) { clicked(b, e); });
    root.addEventListener('keydown', function (e) {
      if ((e.key === 'Enter' || e.key === ' ') && e.target.matches('g.found')) {
        e.preventDefault();
        clicked(b, e);
      }
    });
    root.addEventListener('toggle', function () { if (root.open) fit(b); });
    ready(b);
    return b;
  }

  // ready settles a drawing that has just come on to the page.
  function ready(b) {
    var sheet = sheetOf(b);
    if (!sheet) return;
    each(sheet, 'figure g.found', function (g) {
      g.setAttribute('tabindex', '0');
      g.setAttribute('role', 'button');
      g.setAttribute('aria-label', 'finding ' + g.dataset.number);
    });
    each(b.root, '.layers input', function (i) { layer(b, i); });
    each(b.root, '.findings > li', function (li) {
      var sizes = sizesOf(li);
      li.classList.toggle('unseen', sizes.length > 0 && sizes.indexOf(sheet.dataset.size) < 0);
    });
    fit(b);
    if (b.picked) show(b, b.picked, false);
  }

  function sheetOf(b) { return b.root.querySelector('.sheet'); }

  // sizesOf are the sizes that a finding shows in; none where it shows in all.
  function sizesOf(row) { return JSON.parse(row.dataset.sizes || '[]'); }

  function each(root, selector, f) { Array.prototype.forEach.call(root.querySelectorAll(selector), f); }

  function change(b, input) {
    if (input.type === 'radio') size(b, input.value);
    else if (input.name === 'layer') layer(b, input);
    else b.root.classList.toggle('no-' + input.value, !input.checked);
  }

  // size puts the drawing of another size in the place of the one that is shown.
  function size(b, name) {
    var now = sheetOf(b), next = null;
    if (!now || now.dataset.size === name) return;
    each(b.root, 'template[data-size]', function (t) { if (t.dataset.size === name) next = t; });
    if (!next) return;
    var sheet = document.createElement('div');
    sheet.className = 'sheet';
    sheet.dataset.size = name;
    sheet.appendChild(next.content);
    var kept = document.createElement('template');
    kept.dataset.size = now.dataset.size;
    while (now.firstChild) kept.content.appendChild(now.firstChild);
    next.replaceWith(sheet);
    now.replaceWith(kept);
    each(b.root, '.sizes input', function (i) { i.checked = i.value === name; });
    ready(b);
  }

  function layer(b, input) {
    var sheet = sheetOf(b);
    if (!sheet) return;
    each(sheet, '[data-layer]', function (m) {
      if (m.dataset.layer === input.value) m.classList.toggle('off', !input.checked);
    });
  }

  function zoom(b, how) {
    if (how === 'in') b.zoom = Math.min(b.zoom * 1.5, 24);
    if (how === 'out') b.zoom = Math.max(b.zoom / 1.5, 1);
    if (how === 'fit') b.zoom = 1;
    each(b.root, '.zoom output', function (o) { o.textContent = Math.round(b.zoom * 100) + ' %'; });
    fit(b);
    if (b.picked) centre(b, b.picked);
  }

  // fit gives the cloth of each panel the room that there is. Words and tags keep
  // their size on the screen, and so do the margins that hold them; nothing is
  // drawn smaller than at first, where words would come to lie on each other.
  function fit(b) {
    var sheet = sheetOf(b);
    if (!sheet) return;
    var panels = [], common = Infinity; // pixels a millimetre, alike for all pieces
    each(sheet, 'figure.panel', function (figure) {
      var svg = figure.querySelector('svg'), m = figure.dataset.beside.split(' ').map(Number);
      var box = svg.boxes || (svg.boxes = svg.getAttribute('viewBox').split(' ').map(Number));
      var pt = parseFloat(svg.style.getPropertyValue('--pt'));
      var room = figure.clientWidth - 2;
      if (room <= 0) return;
      var wide = box[2] / pt - m[0] - m[1], high = box[3] / pt - m[2] - m[3];
      var most = Math.min(2, Math.max(0.8 * window.innerHeight / high, 1));
      var scale = Math.max(Math.min((room - m[0] - m[1]) / wide, most), 1);
      var piece = svg.querySelector('rect.ground') !== null;
      if (piece) common = Math.min(common, scale / pt);
      panels.push({ svg: svg, m: m, box: box, pt: pt, wide: wide, high: high, scale: scale, piece: piece });
    });
    panels.forEach(function (p) {
      var m = p.m, scale = (p.piece ? Math.max(common * p.pt, 1) : p.scale) * b.zoom;
      var less = p.pt * (1 - 1 / scale);
      p.svg.setAttribute('viewBox', [p.box[0] + m[0] * less, p.box[1] + m[2] * less, p.box[2] - (m[0] + m[1]) * less, p.box[3] - (m[2] + m[3]) * less].join(' '));
      p.svg.classList.add('set');
      p.svg.style.width = p.wide * scale + m[0] + m[1] + 'px';
      p.svg.style.height = p.high * scale + m[2] + m[3] + 'px';
      p.svg.style.setProperty('--k', 1 / scale);
    });
  }

  function clicked(b, e) {
    var t = e.target;
    var mark = t.closest('g.found[data-number]');
    var row = t.closest('.findings > li');
    var spot = t.closest('a[data-number]');
    var line = t.closest('.source li[data-numbers]');
    if (mark && t.closest('figure')) {
      var list = mark.dataset.number.split(' ');
      pick(b, list[(list.indexOf(b.picked) + 1) % list.length], 'drawing');
    } else if (t.closest('a.line')) {
      e.preventDefault();
      if (row) pick(b, row.dataset.number, 'line');
    } else if (row && t.closest('.open')) {
      pick(b, row.dataset.number, 'list');
    } else if (spot) {
      e.preventDefault();
      pick(b, spot.dataset.number, 'drawing');
    } else if (line) {
      pick(b, line.dataset.numbers.replace(/[[\]]/g, '').split(' ')[0], 'list');
    }
  }

  function rowOf(b, number) { return document.getElementById(b.root.id + '-f' + number); }

  // pick shows a finding everywhere: in the list, in the drawing, in the spec.
  // from is where it was picked, which is not scrolled away.
  function pick(b, number, from) {
    var row = rowOf(b, number);
    current = b;
    b.picked = number;
    if (row) {
      var sizes = sizesOf(row), sheet = sheetOf(b);
      if (sheet && sizes.length > 0 && sizes.indexOf(sheet.dataset.size) < 0) size(b, sizes[0]);
    }
    show(b, number, true);
    if (row && (from !== 'list' || wide())) row.scrollIntoView({ block: 'nearest' });
    if (from === 'line') {
      var line = lineOf(b, row);
      if (line) line.scrollIntoView({ block: 'center' });
    } else if (from === 'list') {
      centre(b, number);
    }
  }

  function wide() { return window.matchMedia('(min-width:64rem)').matches; }

  function lineOf(b, row) {
    var a = row && row.querySelector('a.line');
    return a ? document.getElementById(a.getAttribute('href').slice(1)) : null;
  }

  function show(b, number, speak) {
    each(b.root, '.picked', function (m) { m.classList.remove('picked'); });
    each(b.root, '[aria-current]', function (m) { m.removeAttribute('aria-current'); });
    var row = rowOf(b, number);
    var sheet = sheetOf(b);
    if (sheet) each(sheet, 'figure [data-number~="' + number + '"]', function (m) { m.classList.add('picked'); });
    if (!row) return;
    row.classList.add('picked');
    row.querySelector('.open').setAttribute('aria-current', 'true');
    var line = lineOf(b, row);
    if (line) {
      line.classList.add('picked');
      excerpt(row, line);
    }
    if (speak) tell(b, row);
  }

  // excerpt puts the lines of the spec about a finding beneath it.
  function excerpt(row, line) {
    if (row.querySelector('.excerpt')) return;
    var list = document.createElement('ol');
    list.className = 'excerpt';
    for (var l = line, i = 0; l && i < 2; i++) {
      if (l.previousElementSibling && l.previousElementSibling.value === l.value - 1) l = l.previousElementSibling;
    }
    for (i = 0; l && i < 5; i++, l = l.nextElementSibling) {
      var copy = document.createElement('li');
      copy.dataset.n = l.value;
      copy.className = l === line ? 'meant' : '';
      copy.appendChild(l.querySelector('code').cloneNode(true));
      list.appendChild(copy);
    }
    row.appendChild(list);
  }

  // tell puts the finding on the bar at the foot of a narrow screen.
  function tell(b, row) {
    bar.textContent = '';
    var text = document.createElement('p');
    text.textContent = row.dataset.number + '  ' + row.querySelector('.message').textContent;
    bar.appendChild(button('\u2039', 'the one before', function () { step(-1); }));
    bar.appendChild(text);
    bar.appendChild(button('\u203a', 'next', function () { step(1); }));
    bar.appendChild(button('\u2261', 'to the list', function () {
      row.scrollIntoView({ block: 'center' });
      bar.classList.remove('on');
    }));
    bar.classList.add('on');
  }

  function button(sign, label, f) {
    var b = document.createElement('button');
    b.type = 'button';
    b.textContent = sign;
    b.setAttribute('aria-label', label);
    b.addEventListener('click', f);
    return b;
  }

  // centre brings a finding's first mark to the middle of the screen.
  function centre(b, number) {
    var sheet = sheetOf(b);
    var mark = sheet && (sheet.querySelector('figure g.found[data-number~="' + number + '"]') || sheet.querySelector('figure [data-number~="' + number + '"]'));
    if (!mark) return;
    var view = mark.closest('.view');
    var m = mark.getBoundingClientRect(), v = view.getBoundingClientRect();
    view.scrollLeft += m.left + m.width / 2 - v.left - v.width / 2;
    view.scrollTop += m.top + m.height / 2 - v.top - v.height / 2;
    m = mark.getBoundingClientRect();
    if (m.top < 120 || m.bottom > window.innerHeight - 120) {
      window.scrollBy(0, m.top + m.height / 2 - window.innerHeight / 2);
    }
  }

  // step goes to the next finding or the one before it.
  function step(by) {
    var b = current || benches.filter(function (x) { return x.root.open; })[0];
    if (!b) return;
    var rows = b.root.querySelectorAll('.findings > li');
    if (!rows.length) return;
    var at = -1;
    for (var i = 0; i < rows.length; i++) if (rows[i].dataset.number === b.picked) at = i;
    at = at < 0 ? (by > 0 ? 0 : rows.length - 1) : (at + by + rows.length) % rows.length;
    pick(b, rows[at].dataset.number, 'list');
    if (wide()) rows[at].querySelector('.open').focus({ preventScroll: true });
  }

  document.addEventListener('keydown', function (e) {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    var b = current || benches[0];
    switch (e.key) {
      case 'n': step(1); break;
      case 'p': step(-1); break;
      case '+': case '=': if (b) zoom(b, 'in'); break;
      case '-': if (b) zoom(b, 'out'); break;
      case '0': if (b) zoom(b, 'fit'); break;
      case 'Escape': bar.classList.remove('on'); break;
    }
  });

  // A link to a garment that is folded away unfolds it.
  function arrive() {
    var target = location.hash.length > 1 && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    var garment = target && target.closest('details.garment');
    if (garment && !garment.open) { garment.open = true; target.scrollIntoView(); }
  }
  window.addEventListener('hashchange', arrive);
  window.addEventListener('resize', function () { benches.forEach(fit); });
  arrive();
})();
