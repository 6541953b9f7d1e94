package org.ebbwatch.intake.rule;

/** Why a cell does not go onto the rack as its card stands. */
public sealed interface Objection {

    /** What is the matter, in sentences. */
    String why();

    /** What to do, in sentences; usual practice, which local rules come before. */
    String toDo();

    /** Whether nothing that is written later lifts it. */
    default boolean isForGood() {
        return false;
    }

    /** Its case is open, or what is in it comes out. */
    record NotOnARack(Condition condition) implements Objection {
        @Override
        public String why() {
            return "A cell that is " + condition.words() + " does not go on a rack: " + condition.danger();
        }

        @Override
        public String toDo() {
            return condition.practice();
        }

        @Override
        public boolean isForGood() {
            return condition.isForGood();
        }
    }

    /** The board in front of it is still there. */
    record BoardPresent() implements Objection {
        @Override
        public String why() {
            return "Behind a protection board it will never be empty: at some 2.4 V the board opens a switch, the terminals fall"
                    + " to 0 V within one sample and the current stops, while the cell keeps what it holds. On the rack that"
                    + " would be found as CUT_OFF and the cell be held.";
        }

        @Override
        public String toDo() {
            return "Take the board off, cutting one lead at a time and covering each end at once: both leads in one snip are a"
                    + " short. Then measure at the cell's own terminals and say REMOVED.";
        }
    }

    /** Nobody has measured it. */
    record NotMeasured() implements Objection {
        @Override
        public String why() {
            return "Nobody has written down its voltage.";
        }

        @Override
        public String toDo() {
            return "Hold a meter to the cell's own terminals and write the volts down.";
        }
    }

    /** Nobody knows what it is made of. */
    record ChemistryUnknown() implements Objection {
        @Override
        public String why() {
            return "Nobody knows its chemistry, and limits depend on it.";
        }

        @Override
        public String toDo() {
            return "Read the label: 3.2 V is iron phosphate (lfp), 3.6 to 3.85 V is one of nmc, nca, lco and lmo, which are judged"
                    + " alike. Where nothing can be read take nmc for a cell that shows more than 3.4 V at rest.";
        }
    }
}
