using HomeLine.Agency.Sheets;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class PrintedCareSheetMapping : IEntityTypeConfiguration<PrintedCareSheet>
{
    public void Configure(EntityTypeBuilder<PrintedCareSheet> builder)
    {
        builder.ToTable("printed_care_sheets");
        builder.WrittenOnce().HasKey(s => new { s.Patient, s.Number });
        builder.OfPatient(s => s.Patient);
    }
}
