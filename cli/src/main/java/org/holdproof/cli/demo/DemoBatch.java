package org.holdproof.cli.demo;

/**
 * One batch of the invented kitchen.
 *
 * @param name what its files are called, without an ending
 * @param story what happens to it, in a line
 * @param log the log's text
 * @param record the batch record's JSON
 */
public record DemoBatch(String name, String story, String log, String record) {
    public String logFile() {
        return name + ".csv";
    }

    public String recordFile() {
        return name + ".batch.json";
    }
}
