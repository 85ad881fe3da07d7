/** Reads the reference tables, or a site’s own laid over them, into typed rules. Begin with {@link org.holdproof.core.rules.loading.TableFiles}. */
@NullMarked
package org.holdproof.core.rules.loading;

import org.jspecify.annotations.NullMarked;
