// Runs before the first paint, so that a dark frog room stays dark.
(function () {
  var chosen = null;
  try {
    chosen = localStorage.getItem('linekeeper.theme');
  } catch {
    // Storage may be closed to us; then the system's wish decides.
  }
  var night = chosen === 'night' || (chosen !== 'day' && matchMedia('(prefers-color-scheme: dark)').matches);
  if (night) document.documentElement.dataset.theme = 'night';
})();
