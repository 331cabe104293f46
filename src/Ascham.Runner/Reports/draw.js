// Draws the charts of a report. Each figure's JSON stands in a script element with data-draws="id" and is drawn in the
// element with data-figure="id". Colours come from the page, so that one figure reads on light, dark and paper.
(function () {
  "use strict";
  var narrowBelow = 600, paperWidth = 660; // px
  var shown = [], printing = false;

  function colour(name) { return getComputedStyle(document.documentElement).getPropertyValue(name).trim(); }

  // Sets "xaxis.title.text" and the like.
  function set(target, path, value) {
    var keys = path.split("."), last = keys.pop();
    keys.forEach(function (key) { target = target[key] = target[key] || {}; });
    target[last] = value;
  }

  function isNarrow(element) { return !printing && element.clientWidth < narrowBelow; }

  function layoutFor(element, figure) {
    var layout = JSON.parse(JSON.stringify(figure.layout || {}));
    var ink = printing ? "#222222" : colour("--ink"), line = printing ? "#cccccc" : colour("--line");
    layout.paper_bgcolor = layout.plot_bgcolor = "rgba(0,0,0,0)";
    set(layout, "font.color", ink);
    var axes = Object.keys(layout).filter(function (key) { return /^[xy]axis\d*$/.test(key); });
    ["xaxis", "yaxis"].concat(axes).forEach(function (axis) {
      set(layout, axis + ".gridcolor", line);
      set(layout, axis + ".zerolinecolor", line);
      set(layout, axis + ".automargin", true);
    });
    if (isNarrow(element)) {
      set(layout, "legend.orientation", "h");
      set(layout, "margin.r", 12);
      var changes = layout.meta && layout.meta.narrow || {};
      Object.keys(changes).forEach(function (path) { set(layout, path, changes[path]); });
    }
    delete layout.width;
    if (printing) { layout.width = Math.min(element.clientWidth || paperWidth, paperWidth); } else { layout.autosize = true; }
    if (layout.height) { element.style.height = layout.height + "px"; }
    return layout;
  }

  function config(figure) { return Object.assign({ displaylogo: false }, figure.config, { responsive: true }); }

  function draw(element, figure) {
    shown.push({ element: element, figure: figure, narrow: isNarrow(element) });
    Plotly.newPlot(element, { data: figure.data, layout: layoutFor(element, figure), config: config(figure), frames: figure.frames });
  }

  function redraw() {
    shown.forEach(function (item) {
      item.narrow = isNarrow(item.element);
      Plotly.react(item.element, item.figure.data, layoutFor(item.element, item.figure), config(item.figure));
    });
  }

  document.querySelectorAll("script[data-draws]").forEach(function (script) {
    var element = document.querySelector('[data-figure="' + script.dataset.draws + '"]');
    if (element) { draw(element, JSON.parse(script.textContent)); }
  });

  window.addEventListener("resize", function () {
    if (shown.some(function (item) { return item.narrow !== isNarrow(item.element); })) { redraw(); }
  });
  window.matchMedia("(prefers-color-scheme: dark)").addEventListener("change", redraw);
  window.addEventListener("beforeprint", function () { printing = true; redraw(); });
  window.addEventListener("afterprint", function () { printing = false; redraw(); });
})();
