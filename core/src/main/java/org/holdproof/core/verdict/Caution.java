package org.holdproof.core.verdict;

/**
 * Something to know that has no verdict.
 *
 * @param id stable id
 * @param text a sentence or two
 */
public record Caution(String id, String text) {}
