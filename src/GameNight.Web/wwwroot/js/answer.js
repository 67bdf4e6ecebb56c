// On a weak connection: keeps what was typed, and sends the same form again until it is acknowledged. The form carries a
// key, so that it counts once. Without this script the form simply posts.
const form = document.querySelector("form[data-answer]");
if (form && window.fetch) {
  const note = document.getElementById("sending");
  let busy = false;
  form.addEventListener("submit", async event => {
    event.preventDefault();
    if (busy) { return; }
    busy = true;
    for (let wait = 1; ; wait = Math.min(wait * 2, 60)) {
      try {
        const answer = await fetch(form.action, { method: "POST", body: new URLSearchParams(new FormData(form)) });
        if (answer.status < 500) {
          if (answer.redirected) { location.replace(answer.url); return; }
          document.documentElement.innerHTML = new DOMParser()
            .parseFromString(await answer.text(), "text/html").documentElement.innerHTML;
          scrollTo(0, 0);
          return;
        }
      } catch { /* no network: the same as no answer */ }
      note.hidden = false;
      note.textContent = note.dataset.text.replace("{0}", wait);
      await new Promise(resolve => setTimeout(resolve, wait * 1000));
    }
  });
}
