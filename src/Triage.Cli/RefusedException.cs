using Triage.Workshop;

namespace Triage.Cli;

/// <summary>Ends a command with a refusal: what is wrong and what to do instead.</summary>
internal sealed class RefusedException(Refusal refusal) : Exception(refusal.ToString())
{
    public Refusal Refusal => refusal;

    public static void ThrowIf(Refusal? refused)
    {
        if (refused is not null)
            throw new RefusedException(refused);
    }
}
