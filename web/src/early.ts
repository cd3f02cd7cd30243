// Runs before anything is drawn, so that the page never flashes in the wrong light.
(() => {
  let light: string | null = null;
  try {
    light = localStorage.getItem('throwright-light');
  } catch {
    // A browser that keeps nothing: the system's choice holds.
  }
  if (light === 'day' || light === 'lamp') document.documentElement.dataset.light = light;
})();
