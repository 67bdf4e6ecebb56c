namespace GameNight.Nights.Records;

/// <summary>A way in when passkey and password are lost: kept as SHA-256, gone once used.</summary>
public sealed class RecoveryCode
{
    public RecoveryCode(Guid accountId, byte[] codeHash)
    {
        AccountId = accountId;
        CodeHash = codeHash;
    }

    public Guid AccountId { get; private set; }
    public byte[] CodeHash { get; private set; }
}
