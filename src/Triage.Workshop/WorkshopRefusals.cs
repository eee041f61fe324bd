namespace Triage.Workshop;

/// <summary>Every text with which the workshop refuses something.</summary>
internal static class WorkshopRefusals
{
    public static Refusal FolderGone(string folder) =>
        new(RefusalKind.CannotWrite, $"The book's folder {folder} is no longer there.", "Nothing was written. Bring it back (a drive unplugged?), then try again.");

    public static Refusal FolderBusy(string folder) =>
        new(RefusalKind.CannotWrite, $"Another program has been writing in {folder} for over ten seconds.", "Nothing was written. Wait for it to end, then try again.");

    public static Refusal CannotWrite(string folder, Exception e) =>
        new(RefusalKind.CannotWrite, $"Cannot write in {folder}: {e.Message}", "Nothing was written. Look for a full disk or a read-only folder, then try again.");

    public static Refusal NoAnswer(Triage.Notes.Problem wrong) => new(RefusalKind.NotUnderstood, $"No answer could be worked out. {wrong.What}", wrong.Instead);

    public static Refusal NotSafeOnDisk(string path, Exception e) =>
        new(RefusalKind.CannotWrite, $"{path} was written, but the disk would not say that it is there to stay: {e.Message}", "Look whether it is there, make a copy of the book, and have the disk looked at: a power cut now could take it away again.");

    public static Refusal LeadsOutside(string path) =>
        new(RefusalKind.CannotWrite, $"{path} is reached through a link, which may lead out of the book.", "Nothing was written. Put a folder or a file of its own in the link's place.");

    public static Refusal WouldNotBeRead(string path, Triage.Notes.Problem wrong) =>
        new(RefusalKind.NotUnderstood, $"With this {path} could no longer be read as it was meant: {wrong.What}", $"{wrong.Instead} Nothing of this step was kept.");

    public static Refusal ChangedMeanwhile(string path, string kept) =>
        new(RefusalKind.ChangedMeanwhile, $"{path} was changed by somebody else since you read it.", $"Theirs is in place, yours is kept at {kept}. Read theirs and enter again what is missing.", kept);

    public static Refusal TextChangedMeanwhile(string path) =>
        new(RefusalKind.ChangedMeanwhile, $"{path} was changed by somebody else since you began.", "Nothing of yours was written, and what you typed is still here. Take over what is new, then save again.");

    public static Refusal IdChanged(string before, string after) =>
        new(RefusalKind.NotUnderstood, $"The id was changed from {before} to {after}, and what names the old one would lead nowhere.", $"Write {before} again, or add the line formerly: [{before}]. Nothing was written.");

    public static Refusal NoNote(string path) =>
        new(RefusalKind.NotUnderstood, $"The text of {path} has no front matter any more, so it would no longer be a note.", "Begin it with --- and the fields. Nothing was written.");

    public static Refusal NameTaken(string path) =>
        new(RefusalKind.ChangedMeanwhile, $"There is a note {path} already.", "Nothing was written. Read that one first, then enter again what is missing.");

    public static Refusal NoteGone(string path) =>
        new(RefusalKind.NotFound, $"{path} is no longer there.", "Nothing was written. Look whether it was moved or deleted.");

    public static Refusal NoHistory(string note) =>
        new(RefusalKind.NotFound, $"Nothing is kept of “{note}”.", "Name a note by its id, or a file of the book: what a step or a save replaces is kept from then on.");

    public static Refusal NoSuchVersion(string note, string version) =>
        new(RefusalKind.NotFound, $"No version “{version}” of {note} is kept.", "Look at the list of its versions again: the oldest go when there are many.");

    public static Refusal KeepsChanging(string path) =>
        new(RefusalKind.CannotWrite, $"{path} keeps changing while it is written.", "Nothing was written. Stop what else is writing there, then try again.");

    public static Refusal NoSuch(string kind, string id, IEnumerable<string> near)
    {
        var like = near.ToList();
        return new(RefusalKind.NotFound, $"There is no {kind} “{id}”.", like.Count == 0 ? "Look it up with find." : $"Did you mean {string.Join(", ", like)}?");
    }

    public static Refusal JobClosed(string id) =>
        new(RefusalKind.NotAllowed, $"Job {id} is closed.", "Record a follow-up, or take the machine in again as a new job.");

    public static Refusal NothingSaid(string what) =>
        new(RefusalKind.NotUnderstood, $"No {what} was given.", "Say it in a few words.");

    public static Refusal TooLong(string what, int characters, int most) =>
        new(RefusalKind.NotUnderstood, $"The {what} has {characters:N0} characters; {most:N0} are the most.", "Shorten it, and attach long text as a file.");

    public static Refusal NoSuchValue(string finding, string value, IEnumerable<string> values) =>
        new(RefusalKind.NotUnderstood, $"“{value}” is no value of {finding}.", $"Its values are {string.Join(", ", values)}.");

    public static Refusal NoPair(string example) =>
        new(RefusalKind.NotUnderstood, "What was typed is no list of names with values.", $"Write them like {example}.");

    public static Refusal OnlyOneOf(string trait, IEnumerable<string> values) =>
        new(RefusalKind.NotUnderstood, $"{trait}: a machine has only one of {string.Join(", ", values)}.", "Name one.");

    public static Refusal UnknownMachine(string said, IReadOnlyCollection<string> canBe, IEnumerable<string> classes) =>
        canBe.Count > 0 ? new(RefusalKind.NotFound, "That can be more than one kind of machine.", $"Name the model, or say which: {string.Join(", ", canBe)}.")
        : new(RefusalKind.NotFound, said.Length == 0 ? "It was not said what machine it is." : $"No note knows the machine “{said}”.",
            $"Name a model that has a note, or its kind: {string.Join(", ", classes)}.");

    public static Refusal NoWritableBook() =>
        new(RefusalKind.CannotWrite, "No open book may be written to.", "Start with --book FOLDER, a folder of your own.");

    public static Refusal EraseNotAgreed(string reset, string erases) =>
        new(RefusalKind.NotAllowed, $"{reset} erases {erases}, and the owner has not agreed.", "Ask the owner or save it first, then record the consent.");

    public static Refusal NothingToUndo(string job) =>
        new(RefusalKind.NotFound, $"Job {job} has no such entry to take back.", "Look at its time line again: somebody may have taken it back already.");

    public static Refusal ListedAlready(Triage.Notes.Kinds.Note note) =>
        new(RefusalKind.NotUnderstood, $"“{note.Name}” is listed already, as {note.Id}.", "Nothing was written. Use that one, or say what is different.");

    public static Refusal NoEntry() =>
        new(RefusalKind.NotUnderstood, "What was to be put back is no entry of a log.", "Nothing was written. Record it anew.");

    public static Refusal PhotoTooBig(long bytes, int most) =>
        new(RefusalKind.NotUnderstood, FormattableString.Invariant($"The photo has {bytes / 1e6:0.0} MB; at most {most / 1e6:0} MB are kept."), "Take it smaller, and send it again. Nothing was written.");

    public static Refusal NoPhoto() =>
        new(RefusalKind.NotUnderstood, "The file is no photo: its content is neither JPEG, PNG nor WebP.", "Send a photo of one of these kinds. Nothing was written.");

    public static Refusal NoSuchEntry(string job, int entry, int entries) =>
        new(RefusalKind.NotFound, FormattableString.Invariant($"Job {job} has no entry {entry}: its log holds {entries}."), "Count from 0, the oldest.");

    public static Refusal NotASetting(Triage.Notes.Problem wrong) => new(RefusalKind.NotUnderstood, wrong.What, $"{wrong.Instead} Nothing was written.");

    public static Refusal NotARange(int line, string text) =>
        new(RefusalKind.NotUnderstood, $"Line {line} of the accuracy, “{text}”, is no range.", "Write it like dc-volts 20 V, step 10 mV, 0.5 % + 2. Nothing was written.");

    public static Refusal NameUsed(string name) =>
        new(RefusalKind.NotUnderstood, $"There is an instrument “{name}” already.", "Change that one, or call this one something else.");

    public static Refusal NotInDrawer(string part) =>
        new(RefusalKind.NotFound, $"The drawer holds no such {part} any more.", "Nothing was written. Look at the drawer again: somebody may have taken the last one.");

    public static Refusal TooFewInDrawer(string part, int count, int wanted) => count == 0 ? NotInDrawer(part) :
        new(RefusalKind.NotUnderstood, FormattableString.Invariant($"The drawer holds {count} of this {part}, fewer than {wanted}."), "Nothing was written. Count again, or take fewer.");

    public static Refusal TooManyForDrawer(int most) =>
        new(RefusalKind.NotUnderstood, FormattableString.Invariant($"That would make more than {most:N0} of one kind."), "Nothing was written. Look at the number again.");

    public static Refusal NotADrawing() =>
        new(RefusalKind.NotUnderstood, "The file is no drawing that can be kept: its content is neither JPEG, PNG, WebP nor PDF.", "Save it as one of these, and send it again. Nothing was written.");

    public static Refusal DrawingTooBig(int bytes, int most) =>
        new(RefusalKind.NotUnderstood, FormattableString.Invariant($"The drawing has {bytes / 1e6:0.0} MB; at most {most / 1e6:0} MB are kept."), "Scan it coarser, or page by page. Nothing was written.");

    public static Refusal DrawingListed(string file) =>
        new(RefusalKind.NotUnderstood, $"This very file is among the device's drawings already, as {file}.", "Nothing was written. Change what it shows in the device's note.");

    public static Refusal Negative(string what, double amount) =>
        new(RefusalKind.NotUnderstood, FormattableString.Invariant($"The {what} is {amount}, less than nothing."), "Write 0 or more.");

    public static Refusal NotSure(double sure) =>
        new(RefusalKind.NotUnderstood, FormattableString.Invariant($"{sure} is no chance that it is so."), "Write a number above 0, up to 1: 0.5 when it may as well not be so.");

    public static Refusal NotEditable(string path, string why) =>
        new(RefusalKind.CannotWrite, $"{path} cannot be changed by the program: {why}", "Mend the note in an editor first; the note check names line and column.");
}
