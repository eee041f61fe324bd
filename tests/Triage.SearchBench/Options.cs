using System.Globalization;

namespace Triage.SearchBench;

/// <param name="Books">Folder of the books common and demo.</param>
internal sealed record Options(string Books, int Notes, int Seed)
{
    /// <summary>Null when they cannot be understood.</summary>
    public static Options? Read(string[] args)
    {
        if (args.Length % 2 == 0)
            return null;
        var options = new Options(args[0], 100_000, 1);
        foreach (var pair in args.Skip(1).Chunk(2))
        {
            if (!int.TryParse(pair[1], CultureInfo.InvariantCulture, out var number))
                return null;
            switch (pair[0])
            {
                case "--notes" when number >= 1000:
                    options = options with { Notes = number };
                    break;
                case "--seed":
                    options = options with { Seed = number };
                    break;
                default:
                    return null;
            }
        }

        return options;
    }
}
