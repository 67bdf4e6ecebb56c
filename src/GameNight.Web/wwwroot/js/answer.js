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

// A reader elsewhere reads their own time beside the host's, unless the page says it already.
const own = Intl.DateTimeFormat().resolvedOptions().timeZone;
for (const place of document.querySelectorAll("[data-moment]")) {
  const moment = new Date(place.dataset.moment);
  const shown = zone => new Intl.DateTimeFormat(document.documentElement.lang, {
    weekday: "long", day: "numeric", month: "long", hour: "2-digit", minute: "2-digit", hour12: false, timeZone: zone,
  }).format(moment);
  try {
    if (own && shown(own) !== shown(place.dataset.zone)) {
      place.textContent = place.dataset.text.replace("{0}", shown(own)).replace("{1}", own);
      place.hidden = false;
    }
  } catch { /* a zone that this browser does not know */ }
}
