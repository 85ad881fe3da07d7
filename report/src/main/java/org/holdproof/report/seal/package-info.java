/** Makes a report last and hold: PDF/A-3b, attachments, the PAdES seal, the keys for it, and the check of all that. */
@NullMarked
package org.holdproof.report.seal;

import org.jspecify.annotations.NullMarked;
