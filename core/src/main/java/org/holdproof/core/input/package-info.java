/**
 * Files as people hand them in: strict JSON, sheets of comma-separated values, and one way to say why a file cannot be
 * used. Begin with {@link org.holdproof.core.input.StrictJson} and {@link org.holdproof.core.input.CsvSheet}.
 */
@NullMarked
package org.holdproof.core.input;

import org.jspecify.annotations.NullMarked;
