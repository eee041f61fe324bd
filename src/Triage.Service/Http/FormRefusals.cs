using Triage.Workshop;

namespace Triage.Service.Http;

/// <summary>Why a form was refused before its step was looked at.</summary>
internal static class FormRefusals
{
    public static Refusal NotSure { get; } = new(RefusalKind.NotUnderstood, "It was not said that this is meant.", "Nothing was erased. Tick that it is, and send it again.");

    public static Refusal Old { get; } = new(
        RefusalKind.NotAllowed, "This form was made for another bench, or by another page.", "What you typed is still here and nothing was written. Look at it, and press the button again.");
}
