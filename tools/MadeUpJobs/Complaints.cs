using Triage.Notes.Kinds;

namespace MadeUpJobs;

/// <summary>How an owner puts what a machine does.</summary>
internal static class Complaints
{
    private static readonly string[] Before =
    [
        "", "", "", "", "My daughter says: ", "It was my late uncle's. ", "Found it at a flea market. ", "Since we moved house: ", "After the summer: ",
        "Only for the choir, but we miss it. ", "Worked at Christmas. ", "Nobody touched it, ", "Bought as working, ", "For the school. ", "Hello, ", "Been like this for a month now: ",
    ];

    private static readonly string[] Between = [", ", ". ", " and ", ", and ", "; also ", ". And ", " - "];

    private static readonly string[] After =
    [
        "", "", "", "", ". Can it be saved?", ". No hurry", ". It does not have to look nice", ", please ring first", ". There is a dent but that is old", "!!", ". We tried another socket",
        ". Manual is lost", ". Otherwise fine", ". I would hate to throw it away", ". It is my only one", ". Somebody else has looked at it already",
    ];

    /// <summary>A complaint in the owner's words, of findings as they really are.</summary>
    public static string Of(SickMachine machine, IReadOnlyList<Finding> told, Random random)
    {
        var said = random.Any(Before);
        for (var i = 0; i < told.Count; i++)
        {
            var value = told[i].Values.First(v => v.Id == machine.Shown[told[i].Id]);
            said += (i == 0 ? "" : random.Any(Between)) + (value.Says.IsEmpty ? value.Name : random.Any(value.Says));
        }

        return (said + random.Any(After)).Trim();
    }

    /// <summary>Letters that change places, as they do late at night.</summary>
    public static string Misspelt(string text, double share, Random random) => string.Join(' ', text.Split(' ').Select(word =>
    {
        if (word.Length < 5 || !word.All(char.IsLetter) || !random.Happens(share))
            return word;
        var at = random.Next(1, word.Length - 2);
        return random.Happens(0.5) ? word.Remove(at, 1) : $"{word[..at]}{word[at + 1]}{word[at]}{word[(at + 2)..]}";
    }));
}
