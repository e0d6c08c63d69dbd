(function () {
  'use strict';
  var root = document.documentElement, chart = null;

  // The still picture is what shows until the moving one is drawn, and again when
  // anything goes wrong.
  function still() {
    root.classList.remove('drawn');
  }

  function element(name, text) {
    var e = document.createElement(name);
    e.textContent = text;
    return e;
  }

  // nearest gives the row whose first number is nearest to y.
  function nearest(rows, y) {
    var best = null;
    rows.forEach(function (r) {
      if (best === null || Math.abs(r[0] - y) < Math.abs(best[0] - y)) { best = r; }
    });
    return best;
  }

  // Paints of slanting lines, rising to the right or falling: colour and distance.
  var hatchings = {
    rising: { up: true, ink: '#45505c', size: 8 },
    falling: { up: false, ink: '#45505c', size: 8 },
    unknown: { up: false, ink: '#7d5f00', size: 14 }
  };

  function hatched(h) {
    var tile = document.createElement('canvas'), pen = tile.getContext('2d'), n = h.size;
    tile.width = tile.height = n;
    pen.strokeStyle = h.ink;
    pen.beginPath();
    [-n, 0, n].forEach(function (x) {
      pen.moveTo(x - 2, h.up ? n + 2 : -2);
      pen.lineTo(x + n + 2, h.up ? -2 : n + 2);
    });
    pen.stroke();
    return { image: tile, repeat: 'repeat' };
  }

  // tip says what is known at depth y; reach is how near a reading must be.
  function tip(data, y, reach, on) {
    var box = document.createElement('div'), several = data.drops.length > 1;
    box.className = 'tip';
    box.appendChild(element('b', y.toFixed(1) + ' ' + data.depth));
    data.drops.forEach(function (d) {
      var c = nearest(d.curve, y), step = d.curve.length > 1 ? d.curve[1][0] - d.curve[0][0] : 0;
      if (on(d.key) && c && Math.abs(c[0] - y) <= Math.max(step, reach)) {
        box.appendChild(element('div', (several ? d.name : 'about') + ' ' + c[1].toFixed(1) + ' ' + data.temp +
          (several ? '' : ' (' + c[2].toFixed(1) + ' to ' + c[3].toFixed(1) + ')')));
        if (c.length > 4 && on('density')) { box.appendChild(element('div', 'density rise ' + c[4] + ' ' + data.rise)); }
      } else if (on(d.key)) {
        box.appendChild(element('div', several ? d.name + ' not measured' : 'not measured'));
      }
      if (several) { return; }
      d.readings.forEach(function (r) {
        if (Math.abs(r.depth - y) <= reach) {
          r.lines.forEach(function (l) { box.appendChild(element('div', l)); });
        }
      });
      d.zones.forEach(function (z) {
        if (y >= z.top && y <= z.bottom) { box.appendChild(element('div', 'in: ' + z.name)); }
      });
    });
    return box;
  }

  function draw() {
    var data = JSON.parse(document.getElementById('data').textContent), option = data.option;
    var hidden = {};
    root.classList.add('drawn');
    chart = window.echarts.init(document.getElementById('picture'), null, { renderer: 'canvas', devicePixelRatio: Math.max(2, window.devicePixelRatio || 1) });
    option.series.forEach(function (s) {
      s.silent = true;
      if (s.lineStyle && /^\d/.test(s.lineStyle.type)) { s.lineStyle.type = s.lineStyle.type.split(' ').map(Number); }
      if (s.markArea) {
        s.markArea.silent = true;
        s.markArea.data.forEach(function (a) {
          var h = hatchings[a[0].itemStyle.color];
          if (h) { a[0].itemStyle.color = hatched(h); }
        });
      }
      if (s.id === 'labels') {
        s.label.formatter = function (p) { return p.name; };
        s.label.rich = { b: { fontSize: 16, lineHeight: 19, fontWeight: 'bold', color: '#141e28' }, v: { fontSize: 16, lineHeight: 19, color: '#45505c' } };
      }
    });
    option.xAxis.forEach(function (a) { a.nameTextStyle = { fontSize: 16, fontWeight: 'bold' }; });
    option.yAxis[0].nameTextStyle = { fontSize: 16, fontWeight: 'bold', align: 'left', padding: [0, 0, 0, -36] };
    option.tooltip.padding = 0;
    option.tooltip.borderWidth = 0;
    option.tooltip.extraCssText = 'box-shadow: none';
    option.tooltip.axisPointer.lineStyle = { color: '#141e28', width: 1.5, type: 'solid' };
    option.tooltip.confine = true;
    option.tooltip.position = function (at, params, box, rect, size) { // never over the depth it tells of
      var below = at[1] + 22, tall = size.contentSize[1];
      return [36, below + tall > size.viewSize[1] ? at[1] - 22 - tall : below];
    };
    option.tooltip.formatter = function (params) {
      var first = Array.isArray(params) ? params[0] : params;
      var a = chart.convertFromPixel({ yAxisIndex: 0 }, 0), b = chart.convertFromPixel({ yAxisIndex: 0 }, 9);
      return tip(data, first.axisValue, Math.abs(b - a), function (key) { return !hidden[key]; });
    };
    chart.setOption(option);
    document.querySelectorAll('[data-key]').forEach(function (button) {
      var key = button.getAttribute('data-key');
      hidden[key] = button.getAttribute('aria-pressed') === 'false';
      button.addEventListener('click', function () {
        hidden[key] = !hidden[key];
        button.setAttribute('aria-pressed', String(!hidden[key]));
        chart.dispatchAction({ type: 'legendToggleSelect', name: key });
        axes();
      });
    });
    window.addEventListener('resize', function () { chart.resize(); });
    window.addEventListener('beforeprint', function () {
      document.querySelectorAll('details').forEach(function (d) { d.open = true; });
      chart.resize(data.drops.length > 1 ? { width: 790, height: 540 } : { width: 560, height: 620 }); chart.getZr().flush(); });
    window.addEventListener('afterprint', function () { chart.resize({ width: 'auto', height: 'auto' }); });

    // axes shows those of what is shown, and gives those below the plot their room.
    function axes() {
      var set = option.xAxis.map(function () { return {}; }), room = 66;
      data.axes.forEach(function (a) {
        set[a.axis] = { show: !hidden[a.key] };
        if (a.below) { set[a.axis].offset = 52; }
        if (a.below && !hidden[a.key]) { room += 52; }
      });
      chart.setOption({ xAxis: set, grid: option.grid.map(function () { return { bottom: room }; }) });
    }
  }

  window.addEventListener('error', still);
  try {
    draw();
  } catch (e) {
    still();
  }
}());
