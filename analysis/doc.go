// Package analysis judges one barn's winter: values in, a Review out. It opens no file, reads no clock and
// draws nothing; the same Input gives the same Review to the last bit.
//
// Each file answers one question:
//
//	judge.go    what does the whole winter amount to?
//	input.go    what is a barn judged by?
//	review.go   what does a judgement hold?
//	beestime.go when were the bees in, and how many hive-days is that?
//	beesseen.go when do the traces show the bees going in and coming out?
//	beeswater.go by what water in the air do the bees show that they came?
//	beeswarm.go by what warmth do the bees show that they came after a logger?
//	beesfans.go when does the always-on fan say the bees went in and came out?
//	beesedge.go with which reading did a logger settle in the barn, or leave it?
//	phase.go    which stretches are judged by themselves?
//	stretch.go  what does a curve come to over the time that is scored?
//	place.go    what was the air like at a place with several loggers?
//	moisture.go what do temperature and humidity say together?
//	bands.go    which limits, and how long was it outside them?
//	exposure.go how much water was in the air, and how near to wet were surfaces?
//	spell.go    when was it outside a limit without a break?
//	cause.go    what went with a spell?
//	causeevent.go which events may have gone with a spell?
//	called.go   when did a stage's rule ask for it?
//	ran.go      when did a record show it running?
//	work.go     how many hours, starts and runs is that?
//	offset.go   how far does the logger read from the thermostat?
//	offsetrecord.go what do recorded starts and stops say of that?
//	swing.go    where does a thermostat show in a temperature?
//	lag.go      how slow is the logger, and what would a quick one have shown?
//	corner.go   where did a fan turn the temperature?
//	period.go   what is known of a stage over one setting?
//	stage.go    what was every stage called for, and what ran?
//	agreement.go do the call and the record agree, and where does the thermostat switch?
//	heat.go     when was heat added, and did it fight the fans?
//	recovery.go how much heat did the intake air get back?
//	mixing.go   when did fans run that move no air out?
//	airflow.go  how much air did a stage move?
//	timer.go    what can a sampled record say of a timer?
//	cycling.go  does a stage switch too often?
//	pattern.go  at what hours, and how cold, was a stage on?
//	speed.go    what is a fan's work worth that ran slower than it could?
//	energy.go   what did the fans take, and cost?
//	surface.go  how long was a wall or ceiling wet?
//	factor.go   how much of the room's warmth reaches a surface?
//	mould.go    could mould have grown on a surface?
//	dryness.go  what did each dry stretch go with?
//	uniformity.go how even was a place?
//	verdict.go  held, damp, dry, fans?
//	finding.go  what is worth a look before next winter?
//	findingevent.go which events and alarms are worth a look?
//	findingheat.go which added heat ran against the fans?
//	event.go    what happened, and when?
//	eventcarry.go when did the bees go in and come out, and what was the air like before and after?
//	eventbatch.go which batches were out and back, and what did the room do meanwhile?
//	eventdoors.go when were doors open?
//	eventpower.go when did the power fail?
//	eventclimb.go how fast did the room climb without fans?
//	eventfirsthour.go how fast did it climb in the first hour, and within what range?
//	eventlight.go when was it not dark?
//	eventwarm.go how long was a warm day coasted through, on which night's cooling?
//	hourly.go   what are a curve's hours?
//	alarm.go    when would an alarm at any line have called, and what did the keeper's log say?
package analysis
