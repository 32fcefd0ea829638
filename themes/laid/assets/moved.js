// Leads on from the page at a former address and keeps the part of the address after "#", which names a state or
// a printing. Without this script the page leads on all the same, and the part is lost.
"use strict";
location.replace(document.currentScript.dataset.to + location.search + location.hash);
