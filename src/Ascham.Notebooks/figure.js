// Draws the figures of a page. A figure pushes [id, {data, layout, config}] onto window.aschamFigures, before or after
// this script has run; it is drawn in every element with that data-figure which has not been drawn yet.
(function () {
  "use strict";
  var waiting = window.aschamFigures || [];
  if (waiting.ready) { return; }
  var shown = [], printing = false;
  var narrowBelow = 600;   // px; a narrower element gets the changes that its layout keeps in meta.narrow
  var printWidth = 660;    // px; fits the text width of A4 and Letter at 96 px to the inch

  // Sets "annotations.0.visible" and the like.
  function set(target, path, value) {
    var keys = path.split("."), last = keys.pop();
    keys.forEach(function (key) { target = target[key] = target[key] || {}; });
    target[last] = value;
  }

  function isNarrow(element) { return (printing ? printWidth : element.clientWidth) < narrowBelow; }

  // The text takes the colour of the page around it, so that one figure reads on light and dark pages and on paper.
  function layoutFor(element, figure) {
    var layout = JSON.parse(JSON.stringify(figure.layout || {}));
    var changes = isNarrow(element) && layout.meta && layout.meta.narrow || {};
    Object.keys(changes).forEach(function (path) { set(layout, path, changes[path]); });
    set(layout, "font.color", printing ? "#222222" : getComputedStyle(element).color);
    if (printing) { layout.width = Math.min(element.clientWidth || printWidth, printWidth); } else { layout.autosize = true; }
    if (layout.height) { element.style.height = layout.height + "px"; }
    return layout;
  }

  // Buttons only where a pointer can hover over the chart; on a touch screen they would lie on top of it.
  function configFor(figure) {
    var config = Object.assign({}, figure.config);
    if (config.displayModeBar === undefined && !window.matchMedia("(hover: hover)").matches) { config.displayModeBar = false; }
    return config;
  }

  function redraw() {
    shown.forEach(function (item) {
      if (!item.element.isConnected) { return; }
      item.narrow = isNarrow(item.element);
      window.Plotly.react(item.element, item.figure.data, layoutFor(item.element, item.figure), configFor(item.figure));
    });
  }

  function draw(id, figure, triesLeft) {
    var elements = document.querySelectorAll('[data-figure="' + id + '"]:not([data-drawn])');
    if (elements.length === 0 && triesLeft > 0) {   // a notebook page may run the script before it attaches the output
      window.requestAnimationFrame(function () { draw(id, figure, triesLeft - 1); });
    }
    elements.forEach(function (element) {
      element.setAttribute("data-drawn", "");
      shown.push({ element: element, figure: figure, narrow: isNarrow(element) });
      window.Plotly.newPlot(element, figure.data, layoutFor(element, figure), configFor(figure));
    });
  }

  window.aschamFigures = { ready: true, redraw: redraw, push: function (item) { draw(item[0], item[1], 60); } };
  function start() { waiting.forEach(window.aschamFigures.push); }
  if (document.readyState === "loading") { document.addEventListener("DOMContentLoaded", start); } else { start(); }

  window.addEventListener("resize", function () {
    if (shown.some(function (item) { return item.narrow !== isNarrow(item.element); })) { redraw(); }
  });
  window.matchMedia("(prefers-color-scheme: dark)").addEventListener("change", redraw);
  window.addEventListener("beforeprint", function () { printing = true; redraw(); });
  window.addEventListener("afterprint", function () { printing = false; redraw(); });
})();
