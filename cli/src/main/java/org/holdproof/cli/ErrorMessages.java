package org.holdproof.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import org.holdproof.cli.terminal.Terminal;
import org.holdproof.core.course.ColumnMissingException;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.report.seal.TimestampException;
import org.holdproof.report.seal.UnusableKeyException;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** Tells a person in one message what went wrong, and gives the exit code for it. */
final class ErrorMessages implements CommandLine.IParameterExceptionHandler, CommandLine.IExecutionExceptionHandler {
    /** Set in the environment, it has a fault of the program followed by the place it came from. */
    private static final String TRACE = "HOLDPROOF_TRACE";

    private final Terminal terminal;

    ErrorMessages(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public int handleParseException(ParameterException wrong, String[] arguments) {
        say(message(wrong));
        terminal.err().println("See: " + wrong.getCommandLine().getCommandSpec().qualifiedName() + " --help");
        return ExitCode.USAGE;
    }

    @Override
    public int handleExecutionException(Exception thrown, CommandLine command, ParseResult parsed) {
        return tell(thrown);
    }

    /** Says what went wrong. */
    int tell(Throwable thrown) {
        if (thrown instanceof Refusal refusal) {
            say(message(refusal));
            return refusal.exitCode();
        }
        if (thrown instanceof TimestampException) {
            say(message(thrown));
            return ExitCode.INTERNAL;
        }
        if (thrown instanceof UnreadableInputException
                || thrown instanceof UnusableKeyException
                || thrown instanceof ColumnMissingException) {
            say(message(thrown));
            return ExitCode.UNREADABLE;
        }
        if (thrown instanceof OutOfMemoryError) {
            say("not enough memory for this input; no verdict was reached."
                    + " Give Java more with JAVA_TOOL_OPTIONS=-Xmx4g, or split the log.");
            return ExitCode.INTERNAL;
        }
        if (thrown instanceof IOException failed) {
            say(words(failed) + "; nothing was finished and no verdict was reached");
        } else {
            say("a fault of the program, not of your files: " + thrown + ". No verdict was reached. Set " + TRACE
                    + "=1 to see where, and report it.");
        }
        if (terminal.variable(TRACE).isPresent()) {
            PrintWriter err = terminal.err();
            thrown.printStackTrace(err);
            err.flush();
        }
        return ExitCode.INTERNAL;
    }

    /** What the file system says, in words. */
    static String words(IOException failed) {
        if (failed instanceof NoSuchFileException missing) {
            return missing.getFile() + ": no such file";
        }
        if (failed instanceof AccessDeniedException denied) {
            return denied.getFile() + ": permission denied";
        }
        if (failed instanceof FileSystemException other && other.getReason() != null) {
            return other.getFile() + ": " + other.getReason();
        }
        return message(failed);
    }

    private static String message(Throwable thrown) {
        String message = thrown.getMessage();
        return message == null || message.isBlank() ? thrown.getClass().getSimpleName() : message;
    }

    private void say(String message) {
        terminal.err().println("holdproof: " + message);
        terminal.err().flush();
    }
}
