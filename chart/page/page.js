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

  // hatched is a paint of slanting lines, for what is not known.
  function hatched() {
    var tile = document.createElement('canvas'), pen = tile.getContext('2d');
    tile.width = tile.height = 12;
    pen.strokeStyle = 'rgba(20, 30, 40, 0.4)';
    pen.beginPath();
    [-12, 0, 12].forEach(function (x) { pen.moveTo(x - 2, 14); pen.lineTo(x + 14, -2); });
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
      if (s.markArea) {
        s.markArea.silent = true;
        s.markArea.data.forEach(function (a) {
          if (a[0].itemStyle.color === 'hatched') { a[0].itemStyle.color = hatched(); }
        });
      }
      if (s.id === 'labels') { s.label.formatter = function (p) { return p.name; }; }
    });
    option.yAxis[0].axisLabel.formatter = function (v) { return v + ' ' + data.depth; };
    option.tooltip.confine = true;
    option.tooltip.position = function (at, params, box, rect, size) { // never over the depth it tells of
      var below = at[1] + 22, tall = size.contentSize[1];
      return [54, below + tall > size.viewSize[1] ? at[1] - 22 - tall : below];
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
        axesBelow();
      });
    });
    window.addEventListener('resize', function () { chart.resize(); });
    window.addEventListener('beforeprint', function () { chart.resize(data.drops.length > 1 ? { width: 790, height: 540 } : { width: 460, height: 600 }); chart.getZr().flush(); });
    window.addEventListener('afterprint', function () { chart.resize({ width: 'auto', height: 'auto' }); });

    // axesBelow gives each axis under the plot its room while what it measures is shown.
    function axesBelow() {
      var axes = option.xAxis.map(function () { return {}; }), room = 0;
      data.below.forEach(function (b) {
        axes[b.axis] = { show: !hidden[b.key], offset: 52 * room };
        if (!hidden[b.key]) { room++; }
      });
      chart.setOption({ xAxis: axes, grid: option.grid.map(function () { return { bottom: 14 + 52 * room }; }) });
    }
  }

  window.addEventListener('error', still);
  try {
    draw();
  } catch (e) {
    still();
  }
}());
