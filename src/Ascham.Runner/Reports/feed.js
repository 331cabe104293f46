// Hands the figures of this page, which stand in it as data, to the script that draws them.
document.querySelectorAll("script[data-draws]").forEach(function (data) {
  (window.aschamFigures = window.aschamFigures || []).push([data.dataset.draws, JSON.parse(data.textContent)]);
});
