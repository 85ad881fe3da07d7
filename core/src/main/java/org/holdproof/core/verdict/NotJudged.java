package org.holdproof.core.verdict;

/**
 * A question the batch was not judged by.
 *
 * @param subject the question in a few words
 * @param why why it was not put, in one sentence
 */
public record NotJudged(String subject, String why) {}
