package org.ebbwatch.sim;

import java.util.Optional;

/** The command line, understood. */
record Arguments(String scenario, Optional<Integer> tcpPort, Optional<Integer> speed, boolean check, boolean help) {
    static Arguments parse(String[] arguments) throws Refused {
        Optional<String> scenario = Optional.empty();
        Optional<Integer> tcpPort = Optional.empty();
        Optional<Integer> speed = Optional.empty();
        boolean check = false;
        for (int i = 0; i < arguments.length; i++) {
            String argument = arguments[i];
            switch (argument) {
                case "--help", "-h" -> {
                    return new Arguments("", tcpPort, speed, check, true);
                }
                case "--check" -> check = true;
                case "--port" -> tcpPort = port(following(arguments, ++i, argument));
                case "--speed" -> speed = Optional.of(whole("--speed", following(arguments, ++i, argument), 1, 65_535));
                default -> {
                    if (argument.startsWith("-")) {
                        throw new Refused("unknown option " + argument);
                    }
                    if (scenario.isPresent()) {
                        throw new Refused("one scenario at a time: " + scenario.get() + " or " + argument);
                    }
                    scenario = Optional.of(argument);
                }
            }
        }
        if (scenario.isEmpty()) {
            throw new Refused("which scenario?");
        }
        return new Arguments(scenario.get(), tcpPort, speed, check, false);
    }

    private static String following(String[] arguments, int at, String option) throws Refused {
        if (at >= arguments.length) {
            throw new Refused(option + " needs a value");
        }
        return arguments[at];
    }

    private static Optional<Integer> port(String text) throws Refused {
        if (text.equals("pty")) {
            return Optional.empty();
        }
        if (text.startsWith("tcp:")) {
            return Optional.of(whole("--port", text.substring("tcp:".length()), 0, 65_535));
        }
        throw new Refused("--port is '" + text + "', allowed is pty or tcp:PORT");
    }

    private static int whole(String option, String text, int lowest, int highest) throws Refused {
        try {
            int number = Integer.parseInt(text);
            if (number >= lowest && number <= highest) {
                return number;
            }
        } catch (NumberFormatException e) {
            // said below, with what is allowed
        }
        throw new Refused(option + " is '" + text + "', allowed is " + lowest + " to " + highest);
    }

    /** A command line that cannot be followed. */
    static final class Refused extends Exception {
        private static final long serialVersionUID = 1;

        Refused(String message) {
            super(message);
        }
    }
}
